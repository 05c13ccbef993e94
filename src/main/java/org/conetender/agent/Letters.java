package org.conetender.agent;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.core.Result;
import org.conetender.core.face.Heard;
import org.conetender.core.face.Names;
import org.conetender.core.face.SetTopic;
import org.conetender.core.image.Request;
import org.conetender.core.settings.Settings;
import org.conetender.port.Transport.Incoming;
import org.conetender.port.Transport.Outgoing;

/**
 * Requests that come as messages, from opening them to their answer. The core understands what they
 * say; here they are only kept until they are answered. Belongs to the publish agent's thread.
 */
final class Letters {

    private final Settings settings;
    private final SetTopic sets;
    private final Names names;
    private final Mail mail;
    private final Map<String, Incoming> open = new LinkedHashMap<>();
    private final Map<String, String> remembered = new TreeMap<>();
    private long count;

    Letters(Settings settings, Names names, Mail mail) {
        this.settings = settings;
        this.sets = new SetTopic(settings, names);
        this.names = names;
        this.mail = mail;
    }

    /** What has to be said at once, which is nothing unless the message is refused unread. */
    List<Outgoing> open(Incoming in) {
        if (sets.property(in.topic()).isEmpty()) {
            return List.of();
        }
        String id = in.properties().getOrDefault("request-id", "mqtt-" + mail.life() + "-" + ++count);
        return switch (sets.read(in.topic(), in.payload())) {
            case Heard.Refused(String sentence) ->
                    answer(in, coneOf(in.topic()), new Answer(false, sentence));
            case Heard.Understood(String cone, var ask) -> {
                Request r = new Request(id, new Request.Origin("mqtt", in.topic(), stale(in)), cone, ask);
                if (open.containsKey(id) || !mail.ask(r)) {
                    yield answer(in, cone, new Answer(false, open.containsKey(id)
                            ? "This request is being carried out already."
                            : "Too many requests at once; send it again in a few seconds."));
                }
                open.put(id, in);
                yield List.of();
            }
        };
    }

    /** A cone that somebody made up has no topics, and must not be given any. */
    private boolean known(String cone) {
        return settings.cone(cone).isPresent();
    }

    private static Optional<String> stale(Incoming in) {
        if (in.retained()) {
            return Optional.of("this command was lying at the broker and may be old");
        }
        String left = in.properties().getOrDefault("expires-in-s", "1");
        return left.startsWith("-") || left.equals("0") ? Optional.of("this command's time had run out")
                : Optional.empty();
    }

    private String coneOf(String topic) {
        String device = topic.substring((names.domain() + "/5/").length());
        int slash = device.indexOf('/');
        String id = slash < 0 ? device : device.substring(0, slash);
        return id.equals(names.site()) ? "" : id.substring(Math.min(id.length(), names.site().length() + 1));
    }

    /** What has to be said when a request, of whatever face, is answered. */
    List<Outgoing> answer(Result.Reply reply) {
        Incoming in = open.remove(reply.request().id());
        List<Outgoing> out = new ArrayList<>();
        String cone = reply.request().cone();
        if (in == null) {
            return answer(null, cone, new Answer(reply.accepted(), reply.sentence()));
        }
        String property = sets.property(in.topic()).orElseThrow();
        if (reply.accepted() && property.startsWith(names.cone(cone) + "/hand/")) {
            out.add(new Outgoing(property + "/$target", in.payload(), true, ""));
            out.add(new Outgoing(property, in.payload(), true, ""));
        }
        out.addAll(answer(in, cone, new Answer(reply.accepted(), reply.sentence())));
        return out;
    }

    /** What can be said before the answer, to everybody; who asked for an answer still gets one. */
    List<Outgoing> note(Result.Note note) {
        return answer(null, note.request().cone(), new Answer(false, note.sentence()));
    }

    private record Answer(boolean accepted, String sentence) {
        /** For who asked for an answer: the same line that the local socket gives. */
        String line() {
            return (accepted ? "ok " : "refused ") + sentence;
        }
    }

    private List<Outgoing> answer(Incoming in, String cone, Answer answer) {
        List<Outgoing> out = new ArrayList<>();
        String sentence = answer.sentence();
        if (in != null && in.properties().containsKey("response-topic")) {
            out.add(new Outgoing(in.properties().get("response-topic"), answer.line(), false,
                    in.properties().getOrDefault("correlation", "")));
        }
        boolean known = known(cone);
        out.add(new Outgoing((known ? names.cone(cone) : names.root()) + "/$log/info", sentence, false, ""));
        if (known) {
            out.add(new Outgoing(names.cone(cone) + "/hand/answer", sentence, true, ""));
        }
        return out;
    }

    /** Keeps what was committed, so that a new connection can be told again. */
    void remember(Outgoing o) {
        remembered.put(o.topic(), o.payload());
    }

    Map<String, String> remembered() {
        return remembered;
    }
}
