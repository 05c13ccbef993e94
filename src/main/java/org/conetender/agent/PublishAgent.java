package org.conetender.agent;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.Result;
import org.conetender.core.face.Paths;
import org.conetender.core.face.Topics;
import org.conetender.core.face.Tree;
import org.conetender.port.Transport;
import org.conetender.port.Transport.Outgoing;

/**
 * Shows the last decision to the world and brings requests in. Never needed: when the broker is gone
 * everything else goes on, and at the next connection the whole tree is published anew.
 */
public final class PublishAgent implements Agent {

    /** Messages in one round (guess: a tree is out within a second, and no round takes long). */
    private static final int MOST_A_ROUND = 32;

    private static final Comparator<Outgoing> BY_TOPIC = Comparator.comparing(Outgoing::topic);

    private final Face face;
    private final Paths paths;
    private final Transport transport;
    private final Mail mail;
    private final Letters letters;
    private final Map<String, String> sent = new HashMap<>();
    private final Set<String> doubtful = new TreeSet<>();
    private final Absence absence;
    private final PowerBack powerBack;
    private final Deque<Outgoing> takenBack = new ArrayDeque<>();
    private long generation = -1;
    private boolean announced;

    PublishAgent(Face face, Transport transport, Mail mail, PowerBack powerBack) {
        this.powerBack = powerBack;
        this.face = face;
        this.paths = new Paths(face.names());
        this.transport = transport;
        this.mail = mail;
        this.absence = new Absence(face.settings());
        this.letters = new Letters(face.settings(), face.names(), mail);
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
            w.messages().forEach(m -> Topics.rung(face.names(), m).forEach(this::again));
            done++;
        }
        if (link.up()) {
            done += mail.shown().map(s -> publish(s, link.generation())).orElse(0);
        } else {
            mail.shown().ifPresent(s -> absence.away(s.at()));
        }
        return done;
    }

    /** It counts as never sent; but it may lie there from before, and be over before the tree is seen. */
    private void again(String topic) {
        sent.remove(topic);
        doubtful.add(topic);
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
            doubtful.addAll(face.everything());
            takenBack.clear();
            takenBack.addAll(face.takenBack());
        }
        Map<String, String> tree = Tree.of(face.settings(), paths, s.result(), s.at());
        letters.remembered().forEach(tree::putIfAbsent);
        // One that was begun before the outbox was full is not begun again.
        List<Outgoing> heads = announced ? List.of()
                : face.heads().stream().filter(h -> !sent.containsKey(h.topic())).toList();
        int count = putAll(heads);
        if (count < heads.size()) {
            return count;
        }
        count += clear(tree);
        List<Outgoing> due = due(tree);
        int taken = putAll(due);
        count += taken;
        return taken < due.size() ? count : count + announce(s);
    }

    /** What is new: the children's, then the root's (mqtt.md, adding children). */
    private List<Outgoing> due(Map<String, String> tree) {
        List<Outgoing> all = new ArrayList<>();
        List<Outgoing> ofRoot = new ArrayList<>();
        String root = face.names().root() + "/";
        tree.forEach((t, p) -> {
            if (!p.equals(sent.get(t))) {
                (t.startsWith(root) ? ofRoot : all).add(new Outgoing(t, p, true, ""));
            }
        });
        all.sort(BY_TOPIC);
        ofRoot.sort(BY_TOPIC);
        if (!announced) {
            face.whole().stream().filter(o -> !o.payload().equals(sent.get(o.topic()))).forEach(all::add);
        }
        all.addAll(ofRoot);
        return all;
    }

    /** How many were taken; stops at the first that was not. */
    private int putAll(List<Outgoing> due) {
        int count = 0;
        for (Outgoing o : due) {
            if (!transport.offer(o)) {
                return count;
            }
            sent.put(o.topic(), o.payload());
            count++;
        }
        return count;
    }

    /** The site is there; what it names no longer is taken back after that. */
    private int announce(Mail.Shown s) {
        int count = announced ? 0 : putAll(List.of(face.ready()));
        announced |= count > 0;
        while (announced && !takenBack.isEmpty() && transport.offer(takenBack.getFirst())) {
            takenBack.removeFirst();
            count++;
        }
        if (announced) {
            absence.back(s.at()).ifPresent(sentence -> say(
                    new Outgoing(face.names().root() + "/$log/warn", sentence, false, "")));
            powerBack.tell(s.result().next().book().boots(), sentence -> transport.offer(
                    new Outgoing(face.names().root() + "/$log/info", sentence, false, "")));
        }
        return count;
    }

    /** A value that is no longer known is worse than none: it is taken back. */
    private int clear(Map<String, String> tree) {
        doubtful.removeIf(tree::containsKey);
        Set<String> gone = new TreeSet<>(doubtful);
        for (String t : sent.keySet()) {
            if (!tree.containsKey(t)) {
                gone.add(t);
            }
        }
        gone.removeIf(t -> t.endsWith("/$state") || t.endsWith("/$description"));
        int count = 0;
        for (String t : gone) {
            if (transport.offer(new Outgoing(t, "", true, ""))) {
                sent.remove(t);
                doubtful.remove(t);
                count++;
            }
        }
        return count;
    }
}
