package org.conetender.core.guard;

import java.util.List;
import java.util.Set;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.judge.Proving;
import org.conetender.core.judge.Proving.Part;

/**
 * Danger: of two switches in series one no longer opens, and nobody knows until the other fails too. Before
 * the first heat of a batch each is tried alone ({@link Proving}); until then there is no other heat.
 */
public final class SwitchesTried implements Guard {

    public static final String ID = "switch";

    /** Guards whose latches speak of switches or wires: when those were mended, both are tried anew. */
    public static final Set<String> VOIDED_BY = Set.of(ID, WeldedHeater.ID, WrongCone.ID);

    @Override
    public String id() {
        return ID;
    }

    @Override
    public List<Finding> look(View v) {
        Part part = v.judged().proving().part();
        if (v.latch(ID).isPresent() || part.failed()) {
            return List.of(Finding.trip(ID, part.failed() ? what(v, part)
                    : v.latch(ID).orElseThrow().why(), Power.HEAT, Power.CUT_OUT)
                    .alarm(AlarmKind.SWITCH_STUCK));
        }
        return switch (part) {
            case PASSED, CUT_OUT_STUCK, HEATER_STUCK -> List.of();
            case UNTESTABLE -> List.of(Finding.veto(ID,
                    "its switches could not be tried: the water warms too much by itself; little heat now"));
            case HEATER -> List.of(tried(Power.CUT_OUT));
            case CUT_OUT -> List.of(tried(Power.HEAT));
            case WAITING, BETWEEN, AGAIN, OFF, LOOKING -> List.of(tried(Power.HEAT, Power.CUT_OUT));
        };
    }

    private static Finding tried(Power... denied) {
        return Finding.veto(ID, "its switches are tried before the first heat", denied);
    }

    private static String what(View v, Part part) {
        String cone = v.cone().id();
        return part == Part.CUT_OUT_STUCK
                ? "the cut-out of cone " + cone + " does not open: the water warmed while it alone was open"
                : "the heater's own switch of cone " + cone
                        + " does not open: the water warmed while it alone was open";
    }

    /** Nothing but another trial can tell, and it follows at once: a person's word counts till then. */
    @Override
    public boolean causeGone(View v) {
        return true;
    }
}
