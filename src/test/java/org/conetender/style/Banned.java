package org.conetender.style;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * A call that is not made here, and what to write instead.
 *
 * @param call how it looks in code
 * @param where the files it is banned in
 * @param instead the replacement, as a sentence
 */
record Banned(Pattern call, Predicate<SourceFile> where, String instead) {

    private static final Predicate<SourceFile> EVERYWHERE = f -> true;
    private static final Predicate<SourceFile> MAIN = SourceFile::isMain;

    static final List<Banned> ALL = List.of(
            ban("System\\.(nanoTime|currentTimeMillis)\\b"
                    + "|\\b(Instant|LocalDate|LocalTime|LocalDateTime|ZonedDateTime|OffsetDateTime)"
                    + "\\.now\\("
                    + "|\\bnew Date\\(\\)|\\bClock\\.system\\w*\\(",
                    f -> !in(f, "adapter.clock"),
                    "take a port.Clock or a moment as argument; only adapter.clock reads a clock"),
            ban("\\bThread\\.sleep\\(|\\bTimeUnit\\.\\w+\\.sleep\\(|\\.sleep\\(", EVERYWHERE,
                    "advance the simulated clock; an adapter's own thread parks with LockSupport"),
            ban("\\bparkNanos\\(", f -> !in(f, "adapter") && !in(f, "app"),
                    "logic never waits; hand the time in"),
            ban("\\borg\\.(mockito|easymock|jmock)\\b|\\bmockk\\b", EVERYWHERE,
                    "write a small fake that keeps the port's contract"),
            ban("@Disabled\\b|@Ignore\\b|\\bassume(True|False|That)\\(|\\bAssumptions\\.", EVERYWHERE,
                    "mend the test, or fail with a sentence that says what is missing"),
            ban("catch \\((final )?(Throwable|Error)\\b", f -> !foreign(f) && !lastResort(f),
                    "catch what you can handle; the rest is a bug that must reach the top"),
            ban("catch \\([^)]*\\)\\s*\\{\\s*\\}", EVERYWHERE,
                    "say what the exception means, or let it go on"),
            ban("\\bSystem\\.exit\\(|\\bRuntime\\.getRuntime\\(\\)\\.(exit|halt)\\(", f -> !in(f, "app")
                    && f.isMain(),
                    "throw; only the app decides how the process ends"),
            ban("\\.getBytes\\(\\)|\\bnew (FileReader|FileWriter)\\(|\\bnew InputStreamReader\\([^,;]*\\)\\)"
                    + "|\\bCharset\\.defaultCharset\\(", EVERYWHERE,
                    "name the charset: StandardCharsets.UTF_8"),
            ban("\\.to(Lower|Upper)Case\\(\\)", EVERYWHERE, "name the locale: Locale.ROOT"),
            ban("\\.formatted\\(|\\bString\\.format\\((?!\\s*Locale\\.)", MAIN,
                    "write core.unit.Text.of(…): the machine's language must not turn 27.0 into 27,0"),
            ban("\\.ofPattern\\([^,;]*\\);", MAIN, "name the locale of a date's pattern"),
            ban("\\bMath\\.random\\(|\\bnew Random\\(\\)|\\bThreadLocalRandom\\b|\\bSecureRandom\\b",
                    EVERYWHERE,
                    "take a seed (sim.Seeds), so that every run can be repeated"),
            ban("\\bZoneId\\.systemDefault\\(|\\bTimeZone\\.getDefault\\(", f -> f.isMain() && !in(f, "app"),
                    "take the zone from the settings"),
            ban("\\bSystem\\.(out|err)\\b|\\.printStackTrace\\(", f -> f.isMain() && !in(f, "app"),
                    "log through slf4j in agents and adapters; return sentences in core"));

    private static Banned ban(String call, Predicate<SourceFile> where, String instead) {
        return new Banned(Pattern.compile(call), where, instead);
    }

    /** Whether the file lives in that part of the project. */
    static boolean in(SourceFile f, String part) {
        String p = "org.conetender." + part;
        return f.packageName().equals(p) || f.packageName().startsWith(p + ".");
    }

    /** Where an agent's thread ends: whatever comes that far makes the outputs safe first. */
    private static boolean lastResort(SourceFile f) {
        return f.path().endsWith("app/Daemon.java");
    }

    /** A method handle into the kernel declares every throwable; it is caught where it is called. */
    private static boolean foreign(SourceFile f) {
        return f.text().contains("invokeExact(");
    }

    /** What to say of that file. */
    List<String> complaints(SourceFile f) {
        List<String> out = new ArrayList<>();
        if (where.test(f)) {
            f.places(call).forEach(place -> out.add(place + ": " + instead));
        }
        return out;
    }
}
