package org.conetender.app.plot;

import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/** A sheet with a heading, in either of the two forms. */
public sealed interface Picture permits BatchPicture, HatchPicture {

    /** What a person wants to know. */
    String title();

    /** What else, below it. */
    List<String> lines();

    /** All of it. */
    void draw(Pen pen);

    /** With its heading as text, for who cannot see. */
    default void svg(OutputStream out) throws IOException {
        Output.svg(out, title(), String.join(". ", lines()), this::draw);
    }

    /** @throws IOException also where this Java has no letters to draw with */
    default void png(OutputStream out) throws IOException {
        Output.png(out, this::draw);
    }
}
