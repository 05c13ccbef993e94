package org.conetender.core.face;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** How what takes figures is said after the cone: for whoever leaves a figure out, or its name. */
final class Examples {

    private static final Map<String, String> WHOLE = Map.of("filled", "filled litres=2 ppt=25",
            "stocked", "stocked lot=L-0417 cysts-g=4", "weighed", "weighed wet-g=9.5",
            "count", "count nauplii=180 umbrella=5 unhatched=20 sample-ml=1",
            "tin", "tin lot=L-0417 cysts-g=200", "usual", "usual litres=2 ppt=25",
            "away", "away helper=neighbour");

    private Examples() {}

    /** Empty for a word that takes none. @param said after it: figures that were given are kept */
    static Optional<String> of(String word, List<String> said) {
        return Optional.ofNullable(WHOLE.get(word)).map(whole -> Arrays.stream(whole.split(" "))
                .map(part -> said.stream().filter(s -> same(s, part)).findFirst().orElse(part))
                .collect(Collectors.joining(" ")));
    }

    /** Whether that names the same, and gives a number where one belongs. */
    private static boolean same(String said, String part) {
        String name = part.substring(0, part.indexOf('=') + 1);
        String number = "[0-9]+([.][0-9]+)?";
        return !name.isEmpty() && said.startsWith(name) && said.length() > name.length()
                && (!part.substring(name.length()).matches(number)
                || said.substring(name.length()).matches(number));
    }
}
