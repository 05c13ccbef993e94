/**
 * What we believe: readings trusted, projected or untrusted with a reason, and what heater and air
 * have shown of themselves. Nothing here wants or forbids anything. Start with
 * {@link org.conetender.core.judge.Judge}, then {@link org.conetender.core.judge.Water}.
 */
package org.conetender.core.judge;
