package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Lives;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;

/**
 * Danger: a daemon that keeps dying. After the third unexpected exit within ten minutes the heaters are
 * locked and the air runs until a person has looked (style.md, leases). The lamps are off too: what was set
 * aside may have been that hands are in the water. The lock is one for the site, and stands in the book from
 * the moment the life begins.
 */
public final class CrashLoop implements Guard {

    @Override
    public String id() {
        return Lives.LOOP;
    }

    @Override
    public List<Finding> look(View v) {
        List<Finding> found = new ArrayList<>();
        v.book().lives().lock().ifPresent(l -> found.add(
                Finding.trip(id(), l.why(), Power.HEAT, Power.CUT_OUT, Power.LAMPS, Power.AIR_OFF)
                        .alarm(AlarmKind.CRASH_LOOP)));
        // Without that report nothing else shows that no air gets in.
        if (v.book().lives().valveUnheard(v.cone().id()) && v.stage().develops()
                && v.judged().air().onForMs() >= ShutValve.OPEN_WITHIN_MS) {
            found.add(Finding.veto(id(), "its air valve was reported shut, and that report was set aside; "
                    + "report 'valve-open' when it is open, or 'valve-shut'").alarm(AlarmKind.AIR_SHUT_IN));
        }
        return found;
    }

    /** What was set aside may have emptied a cone or shut its air out: heat waits until that is said. */
    @Override
    public boolean causeGone(View v) {
        return v.book().lives().aside().stream().noneMatch(a -> v.settings().cone(a.cone()).isPresent());
    }

    @Override
    public Optional<String> refuses(Request r, View v) {
        return v.book().lives().lock().isPresent() && r.ask() instanceof Ask.Did(Step s) && s == Step.SETTLE
                ? Optional.of("the daemon kept dying and the air must run; acknowledge 'crash-loop' first.")
                : Optional.empty();
    }
}
