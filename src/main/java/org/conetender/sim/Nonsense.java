package org.conetender.sim;

import java.util.List;

/** What nobody should say, said nevertheless. */
final class Nonsense {

    /** Properties and payloads that a clumsy hand or a hostile client may send; few of them make sense. */
    static final List<String[]> SAID = List.of(
            new String[] {"hand/step", "dance"}, new String[] {"hand/filled", "{\"litres\":2}"},
            new String[] {"hand/filled", "{\"litres\":200,\"ppt\":25}"}, new String[] {"hand/filled", "}{"},
            new String[] {"hand/stocked", "{\"lot\":\"\",\"cysts-g\":2}"},
            new String[] {"hand/count", "{\"nauplii\":9,\"umbrella\":1,\"unhatched\":2,\"sample-ml\":0.25}"},
            new String[] {"hand/withdraw", "last"}, new String[] {"hand/withdraw", "drained"},
            new String[] {"hand/acknowledge", "no-such-alarm"}, new String[] {"water/setpoint", "40"},
            new String[] {"water/setpoint", "26"}, new String[] {"water/setpoint", "warm"},
            new String[] {"usual/litres", "99"}, new String[] {"usual/lot", "L-0420"},
            new String[] {"heat/on", "true"});

    /** The same, each refused with a reason of its own. */
    static final List<String[]> SENT = List.of(
            new String[] {"usual/cysts-g", "99"},
            new String[] {"hand/filled", "{\"litres\":2,\"ppt\":25,\"warm\":1}"},
            new String[] {"hand/filled", "{\"litres\":2,\"litres\":2}"},
            new String[] {"hand/filled", "{\"litres\":2,\"ppt\":25} and more"},
            new String[] {"hand/filled", "{\"litres\":2;\"ppt\":25}"},
            new String[] {"hand/filled", "{\"litres\":true}"},
            new String[] {"hand/filled", "{\"litres\":\"2\",\"ppt\":25}"},
            new String[] {"hand/stocked", "{\"lot\":\"L\u0001\",\"cysts-g\":2}"},
            new String[] {"hand/stocked", "{\"lot\":\"L\\x\",\"cysts-g\":2}"},
            new String[] {"hand/stocked", "{\"lot\":\"L\\u12g4\",\"cysts-g\":2}"},
            new String[] {"hand/filled", "{\"ppt\":25}"},
            new String[] {"hand/count",
                    "{\"nauplii\":9.5,\"umbrella\":1,\"unhatched\":2,\"sample-ml\":1}"},
            new String[] {"hand/count",
                    "{\"nauplii\":-9,\"umbrella\":1,\"unhatched\":2,\"sample-ml\":1}"},
            new String[] {"hand/step", "settle".repeat(200)});

    /** Lines that somebody types at the board. */
    static final List<String> TYPED = List.of("z started", "site started", "a", "a dance",
            "a started litres=2", "a acknowledge", "a filled litres", "a filled litres=2 litres=3", "a usual",
            "a filled litres=two", "a withdraw filled stocked", "a setpoint",
            "a ready-by", "a alarms now", "a shelve dry", "a shelve welded 2", "a shelve no-such-alarm 2",
            "a shelve one-probe 0", "a shelve one-probe 13", "site alarms", "a shelve one-probe 2",
            "a weighed wet-g=9.5", "a weighed wet-g=9,5", "site tin lot=unknown cysts-g=425",
            "a count nauplii=3");

    /** Typed there of a cone with a batch: the next one's water is more than it holds, then without salt. */
    static final List<String> REFILLED = List.of("c drained", "c cleaned", "c filled litres=19 ppt=25",
            "c filled litres=2 ppt=0", "c started", "c withdraw");

    private Nonsense() {}
}
