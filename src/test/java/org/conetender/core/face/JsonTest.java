package org.conetender.core.face;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Our small JSON against a library's: what we write it reads, what it writes we read alike. */
class JsonTest {

    private static final JsonFactory LIBRARY = new JsonFactory();

    /**
     * What the library makes of a flat object; numbers as doubles. @throws IOException where it is not JSON
     */
    private static Map<String, Object> library(String text) throws IOException {
        Map<String, Object> out = new LinkedHashMap<>();
        try (JsonParser p = LIBRARY.createParser(text)) {
            p.enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
            if (p.nextToken() != JsonToken.START_OBJECT) {
                throw new IOException("no object");
            }
            while (p.nextToken() != JsonToken.END_OBJECT) {
                String name = p.currentName();
                JsonToken t = p.nextToken();
                if (t == JsonToken.VALUE_STRING) {
                    out.put(name, p.getText());
                } else if (t == JsonToken.VALUE_NUMBER_FLOAT || t == JsonToken.VALUE_NUMBER_INT) {
                    out.put(name, p.getDoubleValue());
                } else {
                    throw new IOException("not flat");
                }
            }
            if (p.nextToken() != null) {
                throw new IOException("text behind");
            }
        }
        return out;
    }

    private static Object value(Random random) {
        if (random.nextBoolean()) {
            return random.nextInt(3) == 0 ? (double) random.nextInt(100) : random.nextDouble() * 1e3 - 500;
        }
        StringBuilder s = new StringBuilder();
        for (int i = 0; i < random.nextInt(12); i++) {
            s.append((char) (random.nextInt(3) == 0 ? random.nextInt(0xd7ff) : random.nextInt(128)));
        }
        return s.toString();
    }

    /** Seeded. */
    @Test
    void whatWeWriteBothReadBackAlike() throws IOException {
        for (int seed = 1; seed <= 500; seed++) {
            Random random = new Random(seed);
            Map<String, Object> m = new LinkedHashMap<>();
            for (int i = 0; i < random.nextInt(6); i++) {
                m.put("n" + i + value(random), value(random));
            }
            String text = Json.write(m);
            assertThat(library(text)).as("seed " + seed).isEqualTo(m);
            assertThat(FlatJson.read(text)).as("seed " + seed).isEqualTo(m);
        }
    }

    /** Seeded: mangled text is accepted by both or by none, save for what is only stricter here. */
    @Test
    void weNeverAcceptWhatTheLibraryRefusesAndNeverReadItOtherwise() {
        int accepted = 0;
        for (int seed = 1; seed <= 4_000; seed++) {
            Random random = new Random(seed);
            StringBuilder s = new StringBuilder("{ \"a\":-1.5e2 ,\"b\":\"x\\u00e9\\\"\" }");
            int at = random.nextInt(s.length());
            switch (random.nextInt(3)) {
                case 0 -> s.setCharAt(at, "\\\"{}:,-+.eE019u \t[]".charAt(random.nextInt(19)));
                case 1 -> s.deleteCharAt(at);
                default -> s.insert(at, "\\\"{}:,-+.eE019u \t[]".charAt(random.nextInt(19)));
            }
            Map<String, Object> ours;
            try {
                ours = FlatJson.read(s.toString());
            } catch (IllegalArgumentException refused) {
                assertThat(refused.getMessage()).isNotBlank();
                continue;
            }
            accepted++;
            try {
                assertThat(ours).as(s.toString()).isEqualTo(library(s.toString()));
            } catch (IOException e) {
                throw new AssertionError("accepted though the library says: " + e.getMessage() + ": " + s);
            }
        }
        assertThat(accepted).isGreaterThan(200);
    }

    @Test
    void listsNestingAndTruthAreWritten() {
        assertThat(Json.write(Map.of("a", List.of(1, 2L, 2.5, true, "x"))))
                .isEqualTo("{\"a\":[1,2,2.5,true,\"x\"]}");
        assertThat(Json.write(List.of())).isEqualTo("[]");
        assertThat(Json.write(3.0)).isEqualTo("3");
    }

    @Test
    void whatHasNoJsonFormIsAnError() {
        List<Object> bad = new ArrayList<>(List.of(Double.NaN, Double.POSITIVE_INFINITY, new Object()));
        bad.add(null);
        for (Object o : bad) {
            assertThatThrownBy(() -> Json.write(o)).isInstanceOf(IllegalArgumentException.class);
        }
    }
}
