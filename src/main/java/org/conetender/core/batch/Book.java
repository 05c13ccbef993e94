package org.conetender.core.batch;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
 * @param cones by id, one for every configured cone and for every cone the record remembers
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
        Map<String, ConeBook> cones = new TreeMap<>();
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
            next = new TreeMap<>(cones);
            next.put(f.cone(), cone.after(f));
        }
        return new Book(next, remember(f.source()), away(f), heard(f), lives.after(f), lots(f));
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
        return cone(cone).latch(guard).or(() -> lives.locks().stream()
                .filter(l -> l.guard().equals(guard)).findFirst());
    }

    private Boots heard(Fact f) {
        Boots b = f.change() instanceof Change.Began(Optional<Moment> last) && last.isPresent()
                ? boots.heard(last.get()) : boots;
        return b.heard(f.at());
    }

    private List<String> remember(String id) {
        return id.isEmpty() ? recentIds : RecentIds.of(recentIds).with(id, REMEMBERED_IDS);
    }

    private Lots lots(Fact f) {
        ConeBook cone = cones.get(f.cone());
        return cone == null ? lots.after(f)
                : !(f.change() instanceof Change.Told(Ask.Withdraw _))
                ? lots.after(f).counted(f, cone.batch())
                : cone.lastReport().map(lots::without).orElse(lots);
    }

    private Optional<Away> away(Fact f) {
        if (f.change() instanceof Change.Told(Ask.Away a)) {
            return a.helper().isEmpty() ? Optional.empty() : Optional.of(new Away(a.helper(), f.at()));
        }
        return away;
    }
}
