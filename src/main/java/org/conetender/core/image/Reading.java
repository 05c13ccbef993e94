package org.conetender.core.image;

/** What a probe said, with each kind of "don't know" as its own case. */
public sealed interface Reading {

    /** @param degreesC a number that passed the bus's own checks; not yet believed */
    record Value(double degreesC) implements Reading {}

    /** The probe has not answered in this life of the process. */
    record NotYet() implements Reading {}

    /** The bus found no such probe. */
    record Absent() implements Reading {}

    /** @param why the answer was not a temperature: checksum, power-on value, nonsense */
    record Faulty(String why) implements Reading {}
}
