package org.conetender.core.hatch;

/**
 * The forms of the rate that a forecast can be asked for, to see what the choice is worth. What lots teach is
 * learnt with the usual one alone: their lower threshold is a part of the posterior ({@link Doubt.Form}), and
 * in another form those degree-hours are others.
 */
public enum RateForm {

    /** {@link Rate#USUAL}. */
    BASE("base", Rate.USUAL),

    /** From the threshold that was regressed (science.md §2.2 row U) to arrest (§1), Briere's first form. */
    BRIERE("briere", new Briere(9.07, 33, 2)),

    /**
     * Halves at 13 and 32 °C and all enthalpies are *guesses*: nobody has published hatch times at the five
     * temperatures that such a curve needs (science.md §3.5). From the cold end of active life to arrest.
     */
    ENZYME("enzyme", SharpeSchoolfield.of(
            new SharpeSchoolfield.Enzyme(13_000, -45_000, 450_000, 13, 32), 4, 33));

    private final String word;
    private final Rate rate;

    RateForm(String word, Rate rate) {
        this.word = word;
        this.rate = rate;
    }

    public Rate rate() {
        return rate;
    }

    /** As a person writes it. */
    @Override
    public String toString() {
        return word;
    }
}
