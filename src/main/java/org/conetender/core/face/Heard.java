package org.conetender.core.face;

import org.conetender.core.image.Ask;

/** What a line or a message came to: something to be judged, or a refusal with a reason. */
public sealed interface Heard {

    /** @param cone its id; empty for the site  @param ask what is asked */
    record Understood(String cone, Ask ask) implements Heard {}

    /** @param sentence what was wrong and what to do */
    record Refused(String sentence) implements Heard {}
}
