package org.conetender.app.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.conetender.adapter.sqlite.RecordReader;
import org.conetender.core.Opening;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.hatch.Zones;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;

/** All that a record holds, folded by the rules of the daemon, batch by batch. */
public final class Past {

    private final Settings settings;
    private final Store.Kept kept;
    private final Ruler ruler;
    private final Book book;
    private final List<Story> stories = new ArrayList<>();

    /** @param settings of today: the cones' limits, and those of cones that are no longer there */
    private Past(Settings settings, Store.Kept kept) {
        this.kept = kept;
        this.settings = withGone(settings, kept.facts());
        this.ruler = new Ruler(kept, settings.site().feeding().zone());
        Map<String, TreeMap<Long, ConeBook>> last = new TreeMap<>();
        this.book = fold(last);
        last.forEach((cone, batches) -> batches.forEach((number, b) -> {
            if (number > 0) {
                stories.add(Story.of(cone, b, number.equals(batches.lastKey())));
            }
        }));
    }

    /** @throws Store.StoreException if the record cannot be read */
    public static Past of(Settings settings, RecordReader record) throws Store.StoreException {
        return new Past(settings, record.kept());
    }

    /** Cones that are configured no longer have batches as well: they are taken for the first one's like. */
    private static Settings withGone(Settings s, List<Fact> facts) {
        List<Cone> cones = new ArrayList<>(s.cones());
        Cone like = cones.getFirst();
        facts.stream().map(Fact::cone).filter(c -> !c.isEmpty() && s.cone(c).isEmpty()).distinct().sorted()
                .forEach(c -> cones.add(new Cone(c, like.fittings(), like.limits(), like.timing(),
                        like.usual())));
        return new Settings(s.site(), cones);
    }

    /** Each batch as it last stood. What a withdrawal took back was never there. */
    private Book fold(Map<String, TreeMap<Long, ConeBook>> last) {
        Set<Long> aside = Opening.aside(kept.facts());
        Moment begin = kept.facts().isEmpty() ? new Moment("", 0, 0, false) : kept.facts().getFirst().at();
        Book b = Book.empty(settings, begin);
        for (Fact f : kept.facts()) {
            b = aside.contains(f.seq()) ? b.passing(f) : b.after(f);
            ConeBook cone = b.cone(f.cone());
            if (cone != null) {
                TreeMap<Long, ConeBook> batches = last.computeIfAbsent(f.cone(), _ -> new TreeMap<>());
                long number = cone.batch().number();
                batches.put(number, cone);
                batches.tailMap(number, false).clear();
            }
        }
        return b;
    }

    /** Every batch, the cones in order of their names, oldest first. */
    public List<Story> stories() {
        return List.copyOf(stories);
    }

    /** A batch whose hour nobody knows counts as begun then: it may have been. */
    public boolean begunOnOrAfter(Story s, LocalDate day) {
        return s.began().flatMap(ruler::hour).map(h -> !h.toLocalDate().isBefore(day)).orElse(true);
    }

    public Ruler ruler() {
        return ruler;
    }

    Book book() {
        return book;
    }

    List<Fact> facts() {
        return kept.facts();
    }

    /** Those that count: what was set aside does not. */
    List<Fact> counted() {
        Set<Long> aside = Opening.aside(kept.facts());
        return kept.facts().stream().filter(f -> !aside.contains(f.seq())).toList();
    }

    /** Times at which the record itself was damaged and a part was lost, in words. */
    public List<String> damages() {
        return kept.damages();
    }

    /** Whether a cone of that name is configured, or was. */
    public boolean knows(String cone) {
        return settings.cone(cone).isPresent();
    }

    List<Cone> cones() {
        return settings.cones();
    }

    /** By which that batch's cysts developed, as the site is configured today. */
    Zones zones(Story s) {
        return Zones.of(settings.site(), cone(s), s.batch());
    }

    Cone cone(Story s) {
        return settings.cone(s.cone()).orElseThrow();
    }

    /** The batch after that one in its cone. */
    Optional<Story> next(Story s) {
        return stories.stream().filter(n -> n.cone().equals(s.cone())
                && n.batch().number() == s.batch().number() + 1).findFirst();
    }
}
