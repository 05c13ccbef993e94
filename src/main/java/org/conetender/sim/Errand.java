package org.conetender.sim;

import java.util.ArrayDeque;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;

/**
 * One cone as a person keeps it in mind: what is to be done there, when, and what is still to be said.
 *
 * <p>A chore is chosen from what is published, begun after a delay, and done by {@link Handwork}; only
 * then are its words said, one breath apart, and an answer is waited for before the next look.
 */
final class Errand {

    private static final long MINUTE_MS = 60_000;
    /** Between two words, and until an answer is looked for (guesses). */
    private static final long BREATH_MS = 20_000;
    private static final long PATIENCE_MS = 2 * MINUTE_MS;
    /** An alert is not answered twice within this time (guess). */
    private static final long AGAIN_MS = 30 * MINUTE_MS;
    /** A report that was forgotten comes to mind after this time (guess). */
    private static final long FORGOTTEN_MS = 25 * MINUTE_MS;
    /** Between two looks for the first nauplii (guess). */
    private static final long LOOK_MS = 40 * MINUTE_MS;
    /** A harvest takes this long before the feed, beside the site's own lead (guess), minutes. */
    private static final double HARVEST_MIN = 20;
    /** One in so many leaves the rest of an unfinished hatch for a second harvest (guess). */
    private static final int SECOND_HARVEST_IN = 6;

    private final Person person;
    private final Handwork work;
    private final String id;
    private final String device;
    private final ArrayDeque<String> words = new ArrayDeque<>();
    private final Set<String> alerts = new TreeSet<>();
    private Chore chore;
    private long dueMs;
    private long quietUntilMs;
    private long answeredAtMs = -AGAIN_MS;
    private String stage = "";
    private boolean looked;
    private boolean impatient;
    /** Harvested by the watch, without a word: only cleaning is left. */
    private boolean alone;

    Errand(Person person, SimCone cone, long firstMs) {
        this.person = person;
        this.work = new Handwork(person, cone);
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
        } else if (now >= quietUntilMs) {
            if (words.isEmpty()) {
                take(choose(now), now);
            } else {
                speak(words.poll(), now);
            }
        }
    }

    private void take(Chore next, long now) {
        if (next != null) {
            chore = next;
            dueMs = now + (next.prompt() ? 0 : person.delayMs()) + (long) (next.minutes() * MINUTE_MS);
        }
    }

    /** What to do next; null when nothing asks for a hand. Alerts wake a sleeper, all else waits. */
    private Chore choose(long now) {
        if (alert(now)) {
            return Chore.MEND;
        }
        String seen = person.awake() ? person.eyes.payload(device + "/hatch/stage") : null;
        if (seen == null) {
            return null;
        }
        if (!seen.equals(stage)) {
            if (seen.equals("hydrating") && person.habit().wantsHours()) {
                person.hands.want(id, person.wantedHour());
            }
            stage = seen;
            looked = false;
            impatient = person.slips();
        }
        String asked = asked();
        if (asked.contains("open the air valve") && !work.valveOpen() && !work.shutOnPurpose(now)) {
            return Chore.OPEN_VALVE;
        }
        return alone ? Chore.CLEAN : byStage(asked);
    }

    private Chore byStage(String asked) {
        boolean tells = person.habit().tellsAll();
        return switch (stage) {
            case "clean" -> Chore.CHARGE;
            case "filled" -> Chore.STOCK;
            // An impatient person does not wait for ready.
            case "hatching" -> impatient ? separate(tells, asked) : tells && !looked ? Chore.LOOK : null;
            case "ready" -> person.harvestTime(HARVEST_MIN) ? separate(tells, asked) : null;
            // Or opens the valve before the layer has formed.
            case "settling" -> asked.contains("shut the air valve") && work.valveOpen() ? Chore.SHUT_VALVE
                    : impatient && !work.valveOpen() ? Chore.OPEN_VALVE : null;
            case "settled" -> tells ? Chore.BEGIN_DRAWING : Chore.DRAW_ALONE;
            case "drawing" -> Chore.DRAW_OFF;
            case "drained", "abandoned" -> Chore.CLEAN;
            default -> null;
        };
    }

    private Chore separate(boolean tells, String asked) {
        if (!tells) {
            return work.valveOpen() ? Chore.SETTLE_ALONE : Chore.DRAW_ALONE;
        }
        boolean valveFirst = work.waterCanRunBack() || asked.contains("shut the air valve");
        return valveFirst && work.valveOpen() ? Chore.SHUT_VALVE : Chore.SETTLE;
    }

    private String asked() {
        String sentence = person.eyes.payload(device + "/hand/next-step");
        return sentence == null ? "" : sentence.toLowerCase(Locale.ROOT);
    }

    private void perform(Chore what, long now) {
        switch (what) {
            case CHARGE -> charge();
            case STOCK -> {
                work.stock();
                words.add("stocked");
            }
            case LOOK -> look(now);
            case SHUT_VALVE -> valve(false, now);
            case OPEN_VALVE -> valve(true, now);
            case SETTLE -> words.add("settle");
            case BEGIN_DRAWING -> words.add("drawing");
            case DRAW_OFF -> drawOff(now);
            case SETTLE_ALONE -> work.valve(false, now);
            case DRAW_ALONE -> {
                work.drawOrange();
                work.empty();
                alone = true;
            }
            case CLEAN -> clean();
            case MEND -> mend(now);
        }
    }

    private void charge() {
        work.charge();
        if (person.habit().tellsAll()) {
            words.add("filled");
        } else {
            work.stock();
            words.add("started");
        }
    }

    private void look(long now) {
        looked = work.seesNauplii();
        if (looked) {
            words.add("first-seen");
        } else {
            quietUntilMs = now + LOOK_MS;
        }
    }

    private void valve(boolean open, long now) {
        work.valve(open, now);
        words.add(open ? "valve-open" : "valve-shut");
    }

    /** Takes the orange layer; a few leave the rest for a second harvest, most empty the cone. */
    private void drawOff(long now) {
        if (work.drawOrange() && person.pick(SECOND_HARVEST_IN) == 0) {
            words.add("part-drawn");
            valve(true, now);
        } else {
            work.empty();
            words.add("drained");
        }
    }

    private void clean() {
        work.scrub();
        if (person.habit().tellsAll() && !alone) {
            words.add("rinsed");
            // Half of the time the question about the harvest is ignored (design.md allows it).
            if (person.pick(2) == 0) {
                words.add(work.judgement());
            }
        }
        words.add("cleaned");
        alone = false;
    }

    private boolean alert(long now) {
        if (now - answeredAtMs < AGAIN_MS) {
            return false;
        }
        alerts.clear();
        for (String of : new String[] {device, person.device("")}) {
            String prefix = of + "/$alert/";
            person.eyes.under(prefix).keySet().forEach(t -> alerts.add(t.substring(prefix.length())));
        }
        return !alerts.isEmpty();
    }

    private void mend(long now) {
        answeredAtMs = now;
        work.mend(now);
        alerts.forEach(a -> person.hands.acknowledge(id, a));
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
            default -> person.hands.say(id, Person.wrongFor(word));
        }
    }
}
