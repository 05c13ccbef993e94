package org.conetender.style;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Tests the tester: planted faults are found, harmless look-alikes are not. */
class OutlineTest {

    private static SourceFile file(String code) {
        return SourceFile.of(Path.of("src/main/java/org/conetender/core/Planted.java"),
                "package org.conetender.core;\n" + code);
    }

    @Test
    void typesMethodsAndParametersAreCounted() {
        Outline o = Outline.of(file("""
                /** A class { in a comment. */
                @Deprecated(since = "{")
                class A<T> {
                    private final Runnable r = () -> { int x = 1; };
                    private static final Map<String, Integer> M = Map.of("}", 1);
                    A(int one, Map<String, Integer> two) { }
                    @Override
                    public String toString() {
                        return "}";
                    }
                    <X> void five(int a, List<Map<X, T>> b, int[] c, X d, T... e)
                            throws Exception {
                        Object o = new Object() {
                            @Override public int hashCode() { return 1; }
                        };
                        if (a > 1) { b.clear(); }
                    }
                    record R(int x, Map<String, X> y) { R { assert x > 0; } int z() { return x; } }
                    enum E { ONE(1),
                            TWO(2) { @Override int n() { return 2; } }; int n() { return 0; } E(int i) {} }
                    interface I { int one(int a); default void two() {} }
                }
                """));
        assertThat(o.types()).extracting(Outline.Type::name, Outline.Type::methods, Outline.Type::components)
                .contains(tuple("A", 2, 0), tuple("A.R", 1, 2), tuple("A.I", 2, 0),
                        tuple("A.five.new", 1, 0));
        assertThat(o.types()).filteredOn(t -> t.name().equals("A.E")).hasSize(1);
        assertThat(o.methods()).extracting(Outline.Method::name, Outline.Method::parameters)
                .contains(tuple("A.<init>", 2), tuple("A.toString", 0), tuple("A.five", 5),
                        tuple("A.I.one", 1));
        assertThat(o.methods()).filteredOn(m -> m.name().equals("A.five")).singleElement()
                .extracting(Outline.Method::lines).isEqualTo(7);
    }

    @Test
    void arrowsAgainstTheMapAreFound() {
        assertThat(Arrows.complaints(file("import org.conetender.port.Clock;"))).hasSize(1);
        assertThat(Arrows.complaints(file("import java.nio.file.Path;"))).hasSize(1);
        assertThat(Arrows.complaints(file("import java.sql.Connection;"))).isNotEmpty();
        assertThat(Arrows.complaints(file("import org.slf4j.Logger;"))).hasSize(1);
        assertThat(Arrows.complaints(file("import java.util.List; class X { org.hipparchus.util.Pair p; }")))
                .isEmpty();
        SourceFile sim = SourceFile.of(Path.of("X.java"),
                "package org.conetender.sim; import org.conetender.core.hatch.Speed;");
        assertThat(Arrows.complaints(sim)).hasSize(1);
        SourceFile adapter = SourceFile.of(Path.of("X.java"),
                "package org.conetender.adapter.mqtt; import org.conetender.adapter.clock.LinuxClock;");
        assertThat(Arrows.complaints(adapter)).hasSize(1);
    }

    @Test
    void bannedCallsAreFoundInCodeButNotInSentences() {
        for (String bad : List.of("long t = System.nanoTime();", "Thread.sleep(1);", "var r = new Random();",
                "String s = \"%.1f\".formatted(x);", "try { } catch (Throwable t) { a(); }",
                "System.exit(1);",
                "x.getBytes();", "x.toLowerCase();", "try { a(); } catch (Exception e) { }",
                "System.out.println(1);", "@Disabled void x() {}")) {
            assertThat(complaints(file("class X { void x() { " + bad + " } }"))).as(bad).hasSize(1);
        }
        String harmless = "/** Never System.nanoTime(). */ class X { String s = \"Thread.sleep(1)\"; }";
        assertThat(complaints(file(harmless))).isEmpty();
    }

    private static List<String> complaints(SourceFile f) {
        return Banned.ALL.stream().flatMap(b -> b.complaints(f).stream()).toList();
    }

    @Test
    void anExceptionMayOnlyShrink() {
        assertThat(new Ratchet("no-such-rule", 4).complaints(Map.of("a", 4))).isEmpty();
        assertThat(new Ratchet("no-such-rule", 4).complaints(Map.of("a", 5))).singleElement().asString()
                .contains("5, the limit is 4");
    }
}
