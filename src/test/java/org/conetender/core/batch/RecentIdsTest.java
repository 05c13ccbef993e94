package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RecentIdsTest {

    /** Against a plain list; "Aa" and "BB" have one hash. */
    @Test
    void theLastOnesAreKnownInTheirOrder() {
        Random random = new Random(3);
        RecentIds ids = RecentIds.of(List.of());
        List<String> plain = new ArrayList<>();
        for (int i = 0; i < 2_000; i++) {
            String id = i % 7 == 0 ? i % 2 == 0 ? "Aa" : "BB" : "r-" + random.nextInt(40);
            RecentIds before = ids;
            List<String> was = List.copyOf(before);
            ids = ids.with(id, 16);
            if (!plain.contains(id)) {
                plain.add(id);
            }
            plain = new ArrayList<>(plain.subList(Math.max(0, plain.size() - 16), plain.size()));
            assertThat(ids).isEqualTo(plain);
            assertThat(ids.contains("nobody's")).isFalse();
            assertThat(before).as("what was there stays as it was").isEqualTo(was);
        }
        assertThat(RecentIds.of(ids)).isSameAs(ids);
        assertThat(RecentIds.of(plain)).isEqualTo(ids);
    }
}
