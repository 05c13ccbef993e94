package org.conetender.core.face;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;

/**
 * The words behind {@code conetender tell}: {@code CONE STEP [name=value ...]}, for example {@code a
 * started}, {@code b filled litres=2 ppt=25}, {@code a acknowledge air-failed}, {@code site away
 * helper=neighbour}.
 */
public final class TellLine {

    /** The word that stands for the whole site instead of a cone. */
    public static final String SITE = "site";

    private TellLine() {}

    /** Reads one line. Never throws. */
    public static Heard read(String line) {
        List<String> words = List.of(line.strip().split("\\s+"));
        if (words.size() < 2) {
            return new Heard.Refused("Say CONE STEP, for example: a started.");
        }
        String cone = words.get(0).equals(SITE) ? "" : words.get(0);
        try {
            return new Heard.Understood(cone, ask(words.get(1), words.subList(2, words.size())));
        } catch (IllegalArgumentException e) {
            return new Heard.Refused("Not understood: " + e.getMessage() + Examples.of(words.get(1),
                    words.subList(2, words.size()))
                    .map(whole -> "; say it as in '" + words.getFirst() + " " + whole + "'.").orElse("."));
        }
    }

    private static Ask ask(String verb, List<String> rest) {
        return switch (verb) {
            case "withdraw" -> new Ask.Withdraw(rest.isEmpty() ? "last" : one(rest, "withdraw filled"));
            case "acknowledge" -> new Ask.Acknowledge(one(rest, "acknowledge air-failed"));
            case "shelve" -> shelve(rest);
            case "alarms" -> {
                if (!rest.isEmpty()) {
                    throw new IllegalArgumentException("'alarms' takes no figures; leave out '"
                            + rest.getFirst() + "'");
                }
                yield new Ask.Alarms();
            }
            case "setpoint" -> new Ask.SetSetpoint(number("setpoint", one(rest, "setpoint 26.5")));
            case "ready-by" -> {
                if (rest.isEmpty()) {
                    throw new IllegalArgumentException("say an hour, as in 'ready-by fri 07:30', or none");
                }
                yield readyBy(String.join(" ", rest));
            }
            case "usual" -> Figures.usual(figures(rest));
            case "weighed" -> Figures.weighed(figures(rest));
            case "tin" -> Figures.tin(figures(rest));
            case "count" -> Figures.count(figures(rest));
            case "away" -> new Ask.Away(figures(rest).getOrDefault("helper", "nobody").toString());
            case "back" -> new Ask.Away("");
            case "filled" -> rest.isEmpty() ? new Ask.Did(Step.FILLED) : Figures.filled(figures(rest));
            case "stocked" -> rest.isEmpty() ? new Ask.Did(Step.STOCKED) : Figures.stocked(figures(rest));
            default -> did(verb, rest);
        };
    }

    private static Ask did(String verb, List<String> rest) {
        Optional<Step> step = Step.of(verb);
        if (step.isEmpty()) {
            throw new IllegalArgumentException("there is no step '" + verb + "'; the steps are "
                    + Description.STEPS.replace(",", ", ")
                    + ", and count, weighed, tin, usual, setpoint, ready-by, withdraw, acknowledge, shelve, "
                    + "alarms, away, back");
        }
        if (!rest.isEmpty()) {
            throw new IllegalArgumentException("'" + verb + "' takes no figures; leave out '"
                    + rest.getFirst() + "'");
        }
        return new Ask.Did(step.get());
    }

    /** An hour, or {@code none} to give it up; Homie's empty string says the same. */
    static Ask readyBy(String said) {
        boolean none = said.isBlank() || said.strip().equals("none");
        return new Ask.ReadyBy(none ? Optional.empty() : Optional.of(Hour.parse(said)));
    }

    private static Ask shelve(List<String> rest) {
        if (rest.size() != 2) {
            throw new IllegalArgumentException("say which alarm and for how many hours, as in 'shelve dry "
                    + "8'; 0 ends it");
        }
        return new Ask.Shelve(rest.get(0), number("hours", rest.get(1)));
    }

    private static String one(List<String> rest, String example) {
        if (rest.size() != 1) {
            throw new IllegalArgumentException("one word is needed, as in '" + example + "'");
        }
        return rest.getFirst();
    }

    private static Map<String, Object> figures(List<String> rest) {
        Map<String, Object> out = new LinkedHashMap<>();
        for (String w : rest) {
            int eq = w.indexOf('=');
            if (eq < 1) {
                throw new IllegalArgumentException("'" + w + "' must read name=value");
            }
            String name = w.substring(0, eq);
            String value = w.substring(eq + 1);
            boolean text = name.equals("lot") || name.equals("helper");
            if (out.put(name, text ? value : number(name, value)) != null) {
                throw new IllegalArgumentException("'" + name + "' stands twice");
            }
        }
        return out;
    }

    static Double number(String name, String value) {
        if (!value.matches("-?[0-9]+(\\.[0-9]+)?([eE][+-]?[0-9]+)?")) {
            throw new IllegalArgumentException("'" + name + "' must be a number"
                    + (value.contains(",") ? " with a point" : "") + ", not '" + value + "'");
        }
        return Double.valueOf(value);
    }
}
