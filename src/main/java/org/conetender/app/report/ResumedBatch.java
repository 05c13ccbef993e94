package org.conetender.app.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;

/**
 * A batch in which a cone stands again, since the report that ended it was taken back. The book has forgotten
 * what belongs to it: that is put back in front of what comes.
 *
 * @param first its facts, and how it stood before them
 */
record ResumedBatch(ConeBook first) {

    /** @param batch as it last stood  @param report that was taken back, whose facts do not count */
    static ResumedBatch of(ConeBook batch, Optional<Fact> report) {
        return new ResumedBatch(with(batch, batch, batch.facts().stream()
                .filter(f -> report.filter(f::sameRequest).isEmpty()).toList()));
    }

    /** As it stands now, with all of its facts. */
    ConeBook joined(ConeBook now) {
        return with(now, first, Stream.concat(first.facts().stream(), now.facts().stream()).toList());
    }

    private static ConeBook with(ConeBook c, ConeBook from, List<Fact> facts) {
        return new ConeBook(from.base(), facts, c.batch(), c.usual(), c.latches(), c.alarms(), c.bridges(),
                c.heater());
    }
}
