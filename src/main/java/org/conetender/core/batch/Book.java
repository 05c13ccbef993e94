package org.conetender.core.batch;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.image.Ask;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;

/**
 * The durable half of the state: nothing but a fold of the facts, so that a restart that reads the
 * same facts stands where it stood.
 *
 * @param cones by id, one for every configured cone, in the order of the configuration
 * @param recentIds the last request ids that were acted on, oldest first
 * @param away who may be called instead, while nobody is near
 * @param boots how the boots of this machine lie in time
 * @param lives how the lives of the process began and ended
 * @param lots what the batches of every lot have taught
 */
public record Book(Map<String, ConeBook> cones, List<String> recentIds, Optional<Away> away, Boots boots,
                   Lives lives, Lots lots) {

    /** A repeat of a request id is refused within this many requests (guess: days of use). */
    static final int REMEMBERED_IDS = 256;

    /** @param helper who may be called  @param since when it was told */
    public record Away(String helper, Moment since) {}

    /** The empty book of these settings. */
    public static Book empty(Settings settings, Moment at) {
        Map<String, ConeBook> cones = new LinkedHashMap<>();
        for (Cone c : settings.cones()) {
            cones.put(c.id(), ConeBook.empty(c.usual(), at));
        }
        return new Book(cones, List.of(), Optional.empty(), Boots.NONE, Lives.NONE, Lots.NONE);
    }

    /** The book of that cone; the cone must be configured. */
    public ConeBook cone(String id) {
        return cones.get(id);
    }

    /** The book after that fact. A fact of a cone that is no longer configured changes nothing. */
    public Book after(Fact f) {
        Map<String, ConeBook> next = cones;
        ConeBook cone = cones.get(f.cone());
        if (cone != null) {
            next = new LinkedHashMap<>(cones);
            next.put(f.cone(), cone.after(f));
        }
        return new Book(next, remember(f.source()), away(away, f), heard(f), lives.after(f), lots(f));
    }

    /**
     * The book after all of these, as one by one, but in one go: a start reads years of them.
     *
     * @param aside numbers of those whose request was set aside
     */
    public Book after(List<Fact> facts, Set<Long> aside) {
        Map<String, ConeBook> nextCones = new LinkedHashMap<>(cones);
        Set<String> ids = new LinkedHashSet<>(recentIds);
        Optional<Away> nextAway = away;
        Lives nextLives = lives;
        Deque<Lots.Kept> lessons = new ArrayDeque<>(lots.all());
        Densities densities = lots.densities();
        List<Moment> heard = new ArrayList<>(facts.size());
        for (Fact f : facts) {
            if (!f.source().isEmpty() && ids.add(f.source()) && ids.size() > REMEMBERED_IDS) {
                ids.remove(ids.iterator().next());
            }
            lastSeen(f).ifPresent(heard::add);
            heard.add(f.at());
            if (!aside.isEmpty() && aside.contains(f.seq())) {
                continue;
            }
            ConeBook cone = nextCones.get(f.cone());
            lots(lessons, cone, f);
            if (cone != null) {
                densities = densities.after(f, cone.batch());
                nextCones.put(f.cone(), cone.after(f));
            }
            nextAway = away(nextAway, f);
            nextLives = nextLives.after(f);
        }
        return new Book(nextCones, RecentIds.of(List.copyOf(ids)), nextAway, boots.heard(heard), nextLives,
                new Lots(List.copyOf(lessons), densities));
    }

    /** The book after a fact of a request that was set aside: only that it was heard is kept. */
    public Book passing(Fact f) {
        return new Book(cones, remember(f.source()), away, heard(f), lives, lots);
    }

    /** How long ago that moment was, as far as the clocks tell. */
    public Span since(Moment m, Moment now) {
        return boots.between(m, now);
    }

    /** Whether that guard waits for a person, for this cone or for the whole site. */
    public Optional<ConeBook.Latch> latch(String cone, String guard) {
        return latch(cone(cone), guard);
    }

    /** The same. @param cone this book's of it */
    public Optional<ConeBook.Latch> latch(ConeBook cone, String guard) {
        Optional<ConeBook.Latch> own = cone.latch(guard);
        return own.isPresent() ? own : lives.locked(guard);
    }

    private Boots heard(Fact f) {
        return lastSeen(f).map(boots::heard).orElse(boots).heard(f.at());
    }

    private static Optional<Moment> lastSeen(Fact f) {
        return f.change() instanceof Change.Began(Optional<Moment> last) ? last : Optional.empty();
    }

    private List<String> remember(String id) {
        return id.isEmpty() ? recentIds : RecentIds.of(recentIds).with(id, REMEMBERED_IDS);
    }

    private Lots lots(Fact f) {
        ConeBook cone = cones.get(f.cone());
        Lots next = withdrawn(cone, f).map(lots::without).orElseGet(() -> lots.after(f));
        return cone == null ? next : next.counted(f, cone.batch());
    }

    private static void lots(Deque<Lots.Kept> all, ConeBook cone, Fact f) {
        withdrawn(cone, f).ifPresent(report -> all.removeIf(k -> k.by(report)));
        Lots.Kept.of(f).ifPresent(k -> {
            if (all.size() == Lots.MOST) {
                all.removeFirst();
            }
            all.addLast(k);
        });
    }

    private static Optional<Fact> withdrawn(ConeBook cone, Fact f) {
        return cone != null && f.change() instanceof Change.Told(Ask.Withdraw _) ? cone.lastReport()
                : Optional.empty();
    }

    private static Optional<Away> away(Optional<Away> before, Fact f) {
        if (f.change() instanceof Change.Told(Ask.Away a)) {
            return a.helper().isEmpty() ? Optional.empty() : Optional.of(new Away(a.helper(), f.at()));
        }
        return before;
    }
}
