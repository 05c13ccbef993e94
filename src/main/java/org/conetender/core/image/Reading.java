package org.conetender.core.image;

/** What a probe said, with each kind of "don't know" as its own case. */
public sealed interface Reading {

    /** @param degreesC a number that passed the bus's own checks; not yet believed */
    record Value(double degreesC) implements Reading {}

    /** The probe has not answered in this life of the process. */
    record NotYet() implements Reading {}

    /** The bus found no such probe. */
    record Absent() implements Reading {}

    /** @param why the answer was no temperature, in plain words; what a technician would add in brackets */
    record Faulty(String why) implements Reading {

        /** For who keeps the cones: without the brackets at the end. */
        public String plain() {
            return why.replaceFirst(" \\([^()]*\\)$", "");
        }
    }
}
