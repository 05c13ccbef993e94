package org.conetender.agent;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.conetender.core.Result;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.face.Description;
import org.conetender.core.face.Names;
import org.conetender.core.face.Topics;
import org.conetender.core.face.Tree;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.port.Transport;
import org.conetender.port.Transport.Outgoing;

/**
 * Shows the last decision to the world and brings requests in. Never needed: when the broker is gone
 * everything else goes on, and at the next connection the whole tree is published anew.
 */
public final class PublishAgent implements Agent {

    /** Messages in one round (guess: a tree is out within a second, and no round takes long). */
    private static final int MOST_A_ROUND = 32;

    private final Settings settings;
    private final Names names;
    private final Transport transport;
    private final Mail mail;
    private final Letters letters;
    private final Map<String, String> sent = new TreeMap<>();
    private final Set<String> doubtful = new TreeSet<>();
    private long generation = -1;
    private boolean announced;

    PublishAgent(Settings settings, Names names, Transport transport, Mail mail) {
        this.settings = settings;
        this.names = names;
        this.transport = transport;
        this.mail = mail;
        this.letters = new Letters(settings, names, mail);
    }

    @Override
    public String name() {
        return "publish";
    }

    @Override
    public int doWork() {
        Transport.Link link = transport.link();
        mail.brokerTrouble(link.trouble());
        int done = 0;
        for (Transport.Incoming in : transport.poll(MOST_A_ROUND)) {
            letters.open(in).forEach(this::say);
            done++;
        }
        for (Result.Words w : mail.words()) {
            w.notes().forEach(n -> letters.note(n).forEach(this::say));
            w.replies().forEach(r -> letters.answer(r).forEach(this::say));
            w.alarms().forEach(a -> sent.remove(topic(a)));
            done++;
        }
        if (link.up()) {
            done += mail.shown().map(s -> publish(s, link.generation())).orElse(0);
        }
        return done;
    }

    private String topic(Alarm a) {
        return names.cone(a.cone()) + "/$alert/" + a.kind().id();
    }

    /** Messages that are not part of the tree: answers and what was committed. */
    private void say(Outgoing o) {
        if (o.retained()) {
            letters.remember(o);
        }
        if (transport.offer(o) && o.retained()) {
            sent.put(o.topic(), o.payload());
        }
    }

    private int publish(Mail.Shown s, long nowGeneration) {
        if (nowGeneration != generation) {
            generation = nowGeneration;
            sent.clear();
            announced = false;
            // What lies at the broker from before may no longer be true: a value, an alert, an older answer.
            doubtful.addAll(Topics.everything(settings, names));
        }
        Map<String, String> tree = Tree.of(settings, names, s.result(), s.at());
        letters.remembered().forEach(tree::putIfAbsent);
        Map<String, String> due = announced ? new LinkedHashMap<>() : heads();
        tree.forEach((t, p) -> {
            if (!p.equals(sent.get(t))) {
                due.put(t, p);
            }
        });
        int count = 0;
        for (Map.Entry<String, String> e : due.entrySet()) {
            if (!put(e.getKey(), e.getValue())) {
                return count;
            }
            count++;
        }
        return count + clear(tree) + announce();
    }

    /** What comes before the values of a fresh connection. */
    private Map<String, String> heads() {
        Map<String, String> h = new LinkedHashMap<>();
        for (Cone c : settings.cones()) {
            h.put(names.cone(c.id()) + "/$state", "init");
            h.put(names.cone(c.id()) + "/$description", Description.cone(settings, c));
        }
        h.put(names.root() + "/$state", "init");
        h.put(names.root() + "/$description", Description.root(settings));
        h.entrySet().removeIf(e -> e.getValue().equals(sent.get(e.getKey())));
        return h;
    }

    /** Children first, then the root (mqtt.md, adding children). */
    private int announce() {
        if (announced) {
            return 0;
        }
        for (Cone c : settings.cones()) {
            if (!put(names.cone(c.id()) + "/$state", "ready")) {
                return 0;
            }
        }
        announced = put(names.root() + "/$state", "ready");
        return settings.cones().size() + 1;
    }

    /** A value that is no longer known is worse than none: it is taken back. */
    private int clear(Map<String, String> tree) {
        int count = 0;
        Set<String> shown = new TreeSet<>(sent.keySet());
        shown.addAll(doubtful);
        for (String t : shown) {
            boolean head = t.endsWith("/$state") || t.endsWith("/$description");
            if (tree.containsKey(t)) {
                doubtful.remove(t);
            } else if (!head && transport.offer(new Outgoing(t, "", true, ""))) {
                sent.remove(t);
                doubtful.remove(t);
                count++;
            }
        }
        return count;
    }

    private boolean put(String topic, String payload) {
        boolean taken = transport.offer(new Outgoing(topic, payload, true, ""));
        if (taken) {
            sent.put(topic, payload);
        }
        return taken;
    }
}
