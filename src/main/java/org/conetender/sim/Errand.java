package org.conetender.sim;

import java.util.ArrayDeque;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.settings.Cone;

/**
 * One cone as a person keeps it in mind: what is to be done there, when, and what is still to be said.
 * The physical part of a chore is done once even if its report is repeated.
 */
final class Errand {

    private static final long MINUTE_MS = 60_000;
    /** Between two words, and until an answer is looked for (guess). */
    private static final long BREATH_MS = 20_000;
    private static final long PATIENCE_MS = 2 * MINUTE_MS;
    /** An alert is not answered twice within this time (guess). */
    private static final long AGAIN_MS = 30 * MINUTE_MS;
    private static final long FORGOTTEN_MS = 25 * MINUTE_MS;
    /** Enough free animals to be seen in a glass (guess). */
    private static final double SEEN = 0.03;
    /** A harvest takes this long before the feed, beside the site's own lead (guess), minutes. */
    private static final double HARVEST_MIN = 20;
    private static final double WARM_TAP_C = 24;
    private static final double ORANGE_LAYER = 0.25;

    private final Person person;
    private final SimCone cone;
    private final String id;
    private final String device;
    private final ArrayDeque<String> words = new ArrayDeque<>();
    private final Set<String> seenAlerts = new TreeSet<>();
    private Chore chore;
    private long dueMs;
    private long quietUntilMs;
    private long shutAtMs = Long.MIN_VALUE / 2;
    private long alertsAtMs = Long.MIN_VALUE / 2;
    private String stage = "";
    private boolean looked;
    private boolean impatient;
    private boolean alone;

    Errand(Person person, SimCone cone, long firstMs) {
        this.person = person;
        this.cone = cone;
        this.id = cone.settings().id();
        this.device = person.device(id);
        this.quietUntilMs = firstMs;
    }

    void step(long now) {
        if (chore != null) {
            if (now >= dueMs) {
                Chore due = chore;
                chore = null;
                perform(due, now);
            }
            return;
        }
        if (now < quietUntilMs) {
            return;
        }
        if (!words.isEmpty()) {
            speak(words.poll(), now);
            return;
        }
        Chore next = choose(now);
        if (next != null) {
            chore = next;
            dueMs = now + (next.prompt() ? 0 : person.delayMs()) + (long) (next.minutes() * MINUTE_MS);
        }
    }

    private Chore choose(long now) {
        if (alert(now)) {
            return Chore.MEND;
        }
        if (!person.awake()) {
            return null;
        }
        String seen = person.eyes.payload(device + "/hatch/stage");
        if (seen == null) {
            return null;
        }
        if (!seen.equals(stage)) {
            stage = seen;
            looked = false;
            impatient = person.slips();
        }
        String asked = asked();
        boolean shutLately = now - shutAtMs <= AGAIN_MS / 2;
        if (asked.contains("open the air valve") && !cone.air().valveOpen() && !shutLately) {
            return Chore.OPEN_VALVE;
        }
        return alone ? Chore.CLEAN : byStage(asked);
    }

    private Chore byStage(String asked) {
        boolean tells = person.habit().tellsAll();
        return switch (stage) {
            case "clean" -> Chore.CHARGE;
            case "filled" -> Chore.STOCK;
            case "hatching" -> impatient ? separate(tells, asked) : tells && !looked ? Chore.LOOK : null;
            case "ready" -> person.harvestTime(HARVEST_MIN) ? separate(tells, asked) : null;
            case "settling" -> asked.contains("shut the air valve") && cone.air().valveOpen()
                    ? Chore.SHUT_VALVE : null;
            case "settled" -> tells ? Chore.BEGIN_DRAWING : Chore.DRAW_ALONE;
            case "drawing" -> Chore.DRAW_OFF;
            case "drained", "abandoned" -> Chore.CLEAN;
            default -> null;
        };
    }

    private Chore separate(boolean tells, String asked) {
        if (!tells) {
            return cone.air().valveOpen() ? Chore.SETTLE_ALONE : Chore.DRAW_ALONE;
        }
        boolean valveFirst = cone.settings().fittings().air().geometry().canSiphon()
                || asked.contains("shut the air valve");
        return valveFirst && cone.air().valveOpen() ? Chore.SHUT_VALVE : Chore.SETTLE;
    }

    private String asked() {
        String sentence = person.eyes.payload(device + "/hand/next-step");
        return sentence == null ? "" : sentence.toLowerCase(Locale.ROOT);
    }

    private void perform(Chore what, long now) {
        switch (what) {
            case CHARGE -> charge();
            case STOCK -> stock("stocked");
            case LOOK -> look(now);
            case SHUT_VALVE -> valve(false, now);
            case OPEN_VALVE -> valve(true, now);
            case SETTLE -> words.add("settle");
            case BEGIN_DRAWING -> words.add("drawing");
            case DRAW_OFF -> drawOff(now);
            case SETTLE_ALONE -> {
                cone.air().valve(false);
                shutAtMs = now;
            }
            case DRAW_ALONE -> {
                catchNauplii();
                cone.drain();
                alone = true;
            }
            case CLEAN -> clean();
            case MEND -> mend(now);
        }
    }

    /** Valve shut, pump on, fill, open the valve: the order that floods no pump (design.md). */
    private void charge() {
        Cone.Usual usual = cone.settings().usual();
        if (!cone.water().waterPresent()) {
            cone.air().valve(false);
            cone.fill(usual.litres(), WARM_TAP_C - person.pick(5), usual.ppt());
        }
        cone.air().valve(true);
        if (person.habit().tellsAll()) {
            words.add("filled");
        } else {
            stock("started");
        }
    }

    private void stock(String word) {
        Cone.Usual usual = cone.settings().usual();
        if (cone.cysts().isEmpty() && cone.water().waterPresent()) {
            cone.stock(usual.lot(), usual.cystsG());
        }
        words.add(word);
    }

    private void look(long now) {
        looked = cone.cysts().map(c -> c.hatchedFraction() >= SEEN).orElse(true);
        if (looked) {
            words.add("first-seen");
        } else {
            quietUntilMs = now + 40 * MINUTE_MS;
        }
    }

    private void valve(boolean open, long now) {
        cone.air().valve(open);
        shutAtMs = open ? shutAtMs : now;
        words.add(open ? "valve-open" : "valve-shut");
    }

    private double catchNauplii() {
        return cone.draw(ORANGE_LAYER * cone.water().litres());
    }

    /** Takes the orange layer; a few leave the rest for a second harvest, most empty the cone. */
    private void drawOff(long now) {
        catchNauplii();
        boolean more = cone.cysts().map(c -> c.hatchedFraction() < 0.85).orElse(false);
        boolean again = more && person.pick(6) == 0;
        if (again) {
            words.add("part-drawn");
            valve(true, now);
            return;
        }
        cone.drain();
        words.add("drained");
    }

    private void clean() {
        cone.drain();
        cone.air().valve(false);
        if (person.habit().tellsAll() && !alone) {
            words.add("rinsed");
            if (person.pick(2) == 0) {
                words.add(judge());
            }
        }
        words.add("cleaned");
        alone = false;
    }

    private String judge() {
        var batches = cone.batches();
        if (batches.isEmpty()) {
            return "right";
        }
        BatchTruth.Harvest last = batches.get(batches.size() - 1).harvest();
        return last.hatched() < 0.8 ? "too-early" : last.energy() < 0.85 ? "late" : "right";
    }

    private boolean alert(long now) {
        if (now - alertsAtMs < AGAIN_MS) {
            return false;
        }
        seenAlerts.clear();
        String prefix = device + "/$alert/";
        person.eyes.under(prefix).keySet().forEach(t -> seenAlerts.add(t.substring(prefix.length())));
        return !seenAlerts.isEmpty();
    }

    private void mend(long now) {
        alertsAtMs = now;
        cone.repair();
        if (cone.cysts().isPresent() && !cone.air().valveOpen() && now - shutAtMs > AGAIN_MS / 2) {
            cone.air().valve(true);
        }
        seenAlerts.forEach(a -> person.hands.acknowledge(id, a));
    }

    /** Says it, or slips: to no one, too late, to the wrong cone, or the wrong word. */
    private void speak(String word, long now) {
        quietUntilMs = now + (words.isEmpty() ? PATIENCE_MS : BREATH_MS);
        if (!person.slips()) {
            person.hands.say(id, word);
            return;
        }
        switch (person.pick(4)) {
            case 0 -> quietUntilMs = now + FORGOTTEN_MS;
            case 1 -> {
                words.addFirst(word);
                quietUntilMs = now + FORGOTTEN_MS;
            }
            case 2 -> person.hands.say(person.anyCone(), word);
            default -> person.hands.say(id, wrongFor(word));
        }
    }

    /** A word that would come later or not at all: what a person reports too early or by mistake. */
    private static String wrongFor(String word) {
        return switch (word) {
            case "filled", "started" -> "cleaned";
            case "stocked" -> "first-seen";
            case "settle" -> "drained";
            case "drawing" -> "part-drawn";
            case "valve-shut" -> "valve-open";
            default -> "settle";
        };
    }
}
