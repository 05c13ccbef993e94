package org.conetender.core.face;

import java.util.Map;
import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/** Reads {@code …/<node>/<property>/set} messages (Homie 5, mqtt.md) into what they ask. */
public final class SetTopic {

    /** Characters of a message that is read at all (guess: the longest honest one has 200). */
    private static final int LONGEST = 1_024;

    private final Settings settings;
    private final Names names;

    public SetTopic(Settings settings, Names names) {
        this.settings = settings;
        this.names = names;
    }

    /** The property's topic of a {@code /set} topic of ours; empty for any other topic. */
    public Optional<String> property(String topic) {
        return topic.endsWith("/set") && place(topic).isPresent()
                ? Optional.of(topic.substring(0, topic.length() - 4)) : Optional.empty();
    }

    /** What that message asks. Never throws. */
    public Heard read(String topic, String payload) {
        Optional<String[]> place = place(topic);
        if (place.isEmpty()) {
            return new Heard.Refused("There is nothing to set at " + topic + ".");
        }
        if (payload.length() > LONGEST) {
            return new Heard.Refused("The message is too long; nothing was changed.");
        }
        try {
            return new Heard.Understood(place.get()[0], ask(place.get()[1], payload));
        } catch (IllegalArgumentException e) {
            return new Heard.Refused("Not understood: " + e.getMessage() + "; nothing was changed.");
        }
    }

    /** Cone id (empty for the site) and {@code node/property}; empty when the topic is not ours. */
    private Optional<String[]> place(String topic) {
        for (Cone c : settings.cones()) {
            String at = names.cone(c.id()) + "/";
            if (topic.startsWith(at) && topic.endsWith("/set")) {
                return Optional.of(new String[] {c.id(), topic.substring(at.length(), topic.length() - 4)});
            }
        }
        String root = names.root() + "/";
        return topic.startsWith(root) && topic.endsWith("/set")
                ? Optional.of(new String[] {"", topic.substring(root.length(), topic.length() - 4)})
                : Optional.empty();
    }

    private static Ask ask(String property, String payload) {
        return switch (property) {
            case "hand/step" -> new Ask.Did(Step.of(payload).orElseThrow(() -> new IllegalArgumentException(
                    "there is no step '" + payload + "'; the steps are "
                    + Description.STEPS.replace(",", ", "))));
            case "hand/filled" -> Figures.filled(FlatJson.read(payload));
            case "hand/stocked" -> Figures.stocked(FlatJson.read(payload));
            case "hand/count" -> Figures.count(FlatJson.read(payload));
            case "hand/weighed" -> Figures.weighed(FlatJson.read(payload));
            case "site/tin" -> Figures.tin(FlatJson.read(payload));
            case "hand/withdraw" -> new Ask.Withdraw(payload.isBlank() || payload.equals("\0") ? "last"
                    : payload);
            case "hand/acknowledge" -> new Ask.Acknowledge(payload);
            case "hand/shelve" -> Figures.shelve(FlatJson.read(payload));
            case "water/setpoint" -> new Ask.SetSetpoint(TellLine.number("setpoint", payload));
            case "hatch/ready-by" -> TellLine.readyBy(payload.replace("\0", ""));
            case "usual/lot" -> Figures.usual(Map.of("lot", payload));
            case "usual/litres", "usual/cysts-g", "usual/ppt" -> {
                String name = property.substring("usual/".length());
                yield Figures.usual(Map.of(name, TellLine.number(name, payload)));
            }
            case "site/away" -> new Ask.Away(payload.equals("\0") ? "" : payload);
            default -> throw new IllegalArgumentException("'" + property + "' cannot be set");
        };
    }
}
