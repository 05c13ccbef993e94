package org.conetender.sim;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Every piece of a refusal that the core can speak, as it stands in its source: a list by hand would miss
 * the next one. A piece is what a program says between the figures and names that it puts in.
 */
final class Refusals {

    private static final Path CORE = Path.of("src/main/java/org/conetender/core");
    /** Where requests are refused; in a guard only from its own refusing on. */
    private static final List<String> PLACES = List.of("Desk.java", "Shelving.java", "batch/Fits.java",
            "batch/Verdict.java",
            "face/SetTopic.java", "face/TellLine.java", "face/Figures.java", "face/FlatJson.java");

    /** Comments, and characters that would be taken for the bounds of a string. */
    private static final Pattern NO_WORDS =
            Pattern.compile("(?s:/\\*.*?\\*/)|(?m:^\\s*//.*$)|'(?:\\\\.|\")'");
    private static final Pattern JOINED = Pattern.compile("\"\\s*\\+\\s*\"");
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");
    private static final Pattern FIGURE = Pattern.compile("%[-.0-9]*[sdf]");
    /** A shorter piece could stand in any sentence. */
    private static final int SHORTEST = 9;

    /** Said by the core, but not to anybody in these worlds, and why not. */
    static final Map<String, String> UNHEARD = Map.of(
            "it has no heater, so its water goes by the room and nothing holds it at a set-point.",
                    "every cone here has one (OutOfReachTest)",
            "There is nothing to set at ", "letters on topics that are not ours stay closed (agent.Letters)",
            "nothing was counted; count a sub-sample with cysts or nauplii in it, or report 'none-seen' if "
                    + "nothing swims yet.", "whoever counts here counts something (FitsTest)");

    private Refusals() {}

    static List<String> pieces() {
        Stream<Path> guards;
        try (Stream<Path> files = Files.list(CORE.resolve("guard"))) {
            guards = files.filter(f -> !f.endsWith("Guard.java")).sorted().toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return Stream.concat(PLACES.stream().map(p -> read(CORE.resolve(p))),
                        guards.map(Refusals::read).filter(t -> t.contains(" refuses("))
                                .map(t -> t.substring(t.indexOf(" refuses("))))
                .flatMap(Refusals::pieces).distinct().toList();
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Stream<String> pieces(String source) {
        String code = JOINED.matcher(NO_WORDS.matcher(source).replaceAll("")).replaceAll("");
        return LITERAL.matcher(code).results().map((MatchResult m) -> m.group(1).translateEscapes())
                .flatMap(s -> Arrays.stream(FIGURE.split(s)))
                .filter(s -> s.strip().length() >= SHORTEST && s.strip().contains(" "));
    }
}
