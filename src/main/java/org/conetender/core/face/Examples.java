package org.conetender.core.face;

import java.util.Map;
import java.util.Optional;

/** How what takes figures is said after the cone: for whoever leaves a figure out, or its name. */
final class Examples {

    private static final Map<String, String> WHOLE = Map.of("filled", "filled litres=2 ppt=25",
            "stocked", "stocked lot=L-0417 cysts-g=4", "weighed", "weighed wet-g=9.5",
            "count", "count nauplii=180 umbrella=5 unhatched=20 sample-ml=1",
            "tin", "tin lot=L-0417 cysts-g=200", "usual", "usual litres=2 ppt=25",
            "away", "away helper=neighbour");

    private Examples() {}

    /** Empty for a word that takes none. */
    static Optional<String> of(String word) {
        return Optional.ofNullable(WHOLE.get(word));
    }
}
