/**
 * How the outside sees us: state to retained topics and sentences, topic and payload to a request or a
 * refusal. No broker, no socket and no decision lives here; it is all text in and text out. Start with
 * {@link org.conetender.core.face.Tree} for what is shown and {@link org.conetender.core.face.SetTopic}
 * for what is understood.
 */
package org.conetender.core.face;
