package org.conetender.adapter.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.CheckpointText;
import org.conetender.core.batch.Fact;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes a new book of what can be read of another one: of a damaged book the facts up to the first that
 * cannot, since a fact without those before it says something else, without their times where these are all
 * that is lost; of a record in which everything lay together, all.
 */
final class Salvage {

    private static final Logger LOG = LoggerFactory.getLogger(Salvage.class);
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("uuuu-MM-dd-HHmmss",
            Locale.ROOT).withZone(ZoneOffset.UTC);

    /**
     * @param facts in order  @param untimed how many of them have lost their time
     * @param checkpoint the last one  @param damages which were known before
     */
    private record Rest(List<Fact> facts, int untimed, Optional<Checkpoint> checkpoint,
                        List<String> damages) {}

    private Salvage() {}

    /**
     * Keeps the damaged book aside and puts in its place what can be read of it. @param where it is damaged
     */
    static void of(Path book, String where) throws IOException, SQLException {
        String aside = aside(book);
        try {
            Swap.copy(book, aside);
            make(book, aside, where);
        } catch (IOException | SQLException | RuntimeException e) {
            // The next start makes another one, and each second there is a start: they would fill the disk.
            Swap.forget(book, aside, e);
            throw e;
        }
        Swap.decide(book, aside);
        Swap.finish(book);
    }

    private static void make(Path book, String aside, String where) throws IOException, SQLException {
        Rest rest = read(book);
        String last = rest.facts().isEmpty() ? "nothing of it could be read"
                : rest.facts().size() + " facts of it could be read, the last is number "
                        + rest.facts().getLast().seq() + (rest.untimed() == 0 ? "" : "; when "
                        + rest.untimed() + " of them were, nobody knows any more");
        String what = "the record was damaged; " + last + "; the damaged one is kept as " + aside;
        LOG.error("{}: {} ({})", book, what, where);
        List<String> damages = new ArrayList<>(rest.damages());
        damages.add(what);
        make(book, new Rest(rest.facts(), rest.untimed(), rest.checkpoint(), damages));
    }

    /**
     * A name that nothing has yet, with the date at which the file was last written (in UTC): a clock
     * without a battery repeats itself.
     */
    static String aside(Path file) throws IOException {
        return aside(file, "damaged-");
    }

    /** @param why what the name begins with */
    static String aside(Path file, String why) throws IOException {
        String name = why + STAMP.format(Files.getLastModifiedTime(Files.exists(file) ? file
                : file.getParent()).toInstant());
        String aside = name + "-" + file.getFileName();
        for (int n = 2; Files.exists(file.resolveSibling(aside))
                || Files.exists(Opening.history(file.resolveSibling(aside))); n++) {
            aside = name + "-" + n + "-" + file.getFileName();
        }
        return aside;
    }

    /**
     * Parts a record in which everything lay together: it becomes the history, and a book is made beside it.
     * Beside a restored one an empty history lies, which gives way. One that holds anything stays, and the
     * record is kept aside.
     *
     * @throws Damaged if it cannot be read whole
     */
    static void part(Path record, Path history, Connection db) throws IOException, SQLException, Damaged {
        Rows rows = new Rows(db, false);
        List<Fact> facts = new ArrayList<>();
        rows.facts(facts);
        boolean restored = Schema.number(db, "SELECT count(*) FROM sqlite_schema WHERE name = 'damage'") > 0;
        make(record, new Rest(facts, 0, rows.checkpoint(), restored ? new Rows(db, true).damages()
                : List.of()));
        db.close();
        Swap.forgetEmpty(history);
        String becomes = Files.exists(history) ? aside(record, "before-parting-")
                : history.getFileName().toString();
        Swap.decide(record, becomes);
        Swap.finish(record);
        LOG.info("the record {} was parted: {} facts stay in it, what else was in it lies in {} from now on",
                record, facts.size(), becomes);
    }

    /** Whatever fails here ends that part of the reading, and only that: it is why we are here. */
    private static Rest read(Path book) {
        List<Fact> facts = new ArrayList<>();
        Optional<Checkpoint> checkpoint = Optional.empty();
        List<String> damages = List.of();
        int untimed = 0;
        try (Connection db = Opening.plain(book)) {
            Rows rows = new Rows(db, Schema.number(db, "PRAGMA user_version") != Schema.TOGETHER);
            try {
                damages = rows.damages();
            } catch (SQLException e) {
                LOG.warn("earlier damages of {} cannot be read: {}", book, e.getMessage());
            }
            try {
                checkpoint = rows.checkpoint();
            } catch (SQLException | Damaged | IllegalArgumentException e) {
                LOG.warn("the checkpoint of {} cannot be read: {}", book, e.getMessage());
            }
            untimed = rows.allFacts(facts);
        } catch (SQLException | Damaged | IllegalArgumentException e) {
            LOG.warn("of {} only {} facts can be read: {}", book, facts.size(), e.getMessage());
        }
        return new Rest(facts, untimed, checkpoint, damages);
    }

    /** Makes the new book, whole and synced, with no journal beside it. */
    private static void make(Path book, Rest rest) throws IOException, SQLException {
        Path making = Swap.making(book);
        Files.deleteIfExists(making);
        Files.deleteIfExists(Swap.beside(making, "-journal"));
        try (Connection db = Opening.plain(making); Statement s = db.createStatement()) {
            s.execute("PRAGMA synchronous = FULL");
            s.execute("PRAGMA foreign_keys = ON");
            Schema.BOOK.bring(db);
            s.execute("BEGIN IMMEDIATE");
            Rows rows = new Rows(db, true);
            rows.insert(rest.facts());
            if (rest.checkpoint().isPresent()) {
                rows.replaceCheckpoint(CheckpointText.write(rest.checkpoint().get()));
            }
            for (String d : rest.damages()) {
                rows.damaged(d);
            }
            s.execute("COMMIT");
        } catch (Schema.Refused e) {
            throw new IllegalStateException("an empty file " + making + " " + e.getMessage(), e);
        }
    }
}
