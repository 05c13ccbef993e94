package org.conetender.app;

import org.conetender.adapter.socket.LineReader;
import org.conetender.core.face.Heard;
import org.conetender.core.face.TellLine;

/** What a line of the local socket means: the same words as {@code conetender tell} takes. Any thread. */
final class Words implements LineReader {

    @Override
    public Line read(String words) {
        return switch (TellLine.read(words)) {
            case Heard.Understood(String cone, var ask) -> new Asks(cone, ask);
            case Heard.Refused(String sentence) -> new Refuses(sentence);
        };
    }
}
