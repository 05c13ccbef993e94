package org.conetender.sim;

/** Heat that passes through two walls that touch, where water stands on both sides. */
final class Touching {

    private Touching() {}

    /** Sets it for this step. @param row each touches the next  @param wPerK 0 where none touch */
    static void heat(SimCone[] row, double wPerK) {
        if (wPerK <= 0) {
            return;
        }
        for (SimCone c : row) {
            c.touchedW = 0;
        }
        for (int i = 1; i < row.length; i++) {
            Plant one = row[i - 1].water();
            Plant two = row[i].water();
            if (one.waterPresent() && two.waterPresent()) {
                double watts = wPerK * (one.waterC() - two.waterC());
                row[i - 1].touchedW -= watts;
                row[i].touchedW += watts;
            }
        }
    }
}
