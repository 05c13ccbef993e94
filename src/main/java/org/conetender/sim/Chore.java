package org.conetender.sim;

/** What a person can be about to do at one cone. */
enum Chore {
    /** Fill, connect air; one who tells little also stocks at once. */
    CHARGE,
    STOCK,
    /** Hold a glass against the light: are there any yet? */
    LOOK,
    SHUT_VALVE,
    OPEN_VALVE,
    SETTLE,
    /** Begin to draw what the daemon has let settle. */
    BEGIN_DRAWING,
    DRAW_OFF,
    /** Shut the air off by hand, without a word, to harvest by the watch. */
    SETTLE_ALONE,
    DRAW_ALONE,
    CLEAN,
    /** Something is wrong: go there, put right what hands can, acknowledge. */
    MEND;

    /** Minutes it takes once begun (guesses from science.md §7: settling 5 to 10, drawing 3 to 5). */
    double minutes() {
        return switch (this) {
            case CHARGE -> 6;
            case STOCK, LOOK, SETTLE, BEGIN_DRAWING -> 0.5;
            case SHUT_VALVE, OPEN_VALVE, SETTLE_ALONE -> 0.2;
            case DRAW_OFF -> 3;
            case DRAW_ALONE -> 7;
            case CLEAN -> 15;
            case MEND -> 2;
        };
    }

    /** Whether it follows at once on what was just done, or is asked for in haste. */
    boolean prompt() {
        return switch (this) {
            case SHUT_VALVE, OPEN_VALVE, SETTLE, BEGIN_DRAWING, DRAW_OFF, DRAW_ALONE -> true;
            case CHARGE, STOCK, LOOK, SETTLE_ALONE, CLEAN, MEND -> false;
        };
    }
}
