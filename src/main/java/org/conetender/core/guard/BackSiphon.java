package org.conetender.core.guard;

import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Fits;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Cone.AirEntry;

/**
 * Danger: water siphons back and floods the pump. Where the pump's outlet does not stand above the
 * waterline and no check valve is fitted, the pump is not stopped until a person has confirmed that
 * the air valve is shut. Order: valve shut while the pump runs, then pump off.
 */
public final class BackSiphon implements Guard {

    @Override
    public String id() {
        return "siphon";
    }

    @Override
    public List<Finding> look(View v) {
        // A shut valve is only known of the water it was shut under: the next filling opens it again.
        boolean shut = v.batch().marks().valveShut() && v.stage().hasWater();
        if (!v.cone().fittings().air().geometry().canSiphon() || shut) {
            return List.of();
        }
        Finding f = Finding.veto(id(),
                "stopping the pump could siphon water into it: its outlet is not above the "
                + "waterline and no check valve is fitted", Power.AIR_OFF);
        return List.of(v.stage().airOff() == null ? f : f.alarm(AlarmKind.SIPHON));
    }

    @Override
    public Optional<String> refuses(Request r, View v) {
        boolean stops = r.ask() instanceof Ask.Did(Step step) && step == Step.SETTLE;
        // Nobody shuts a valve for what is refused all the same.
        if (!stops || !v.cone().fittings().air().geometry().canSiphon() || v.batch().marks().valveShut()
                || Fits.refusal(v.coneBook(), Step.SETTLE).isPresent()) {
            return Optional.empty();
        }
        String how = v.cone().fittings().air().entry() == AirEntry.BOTTOM
                ? "shut the air valve while the pump still runs"
                : "lift the air tube out of the water, or pinch it, while the pump still runs";
        return Optional.of("the pump does not stand above the water and could be flooded: " + how
                + ", report 'valve-shut', then 'settle'.");
    }
}
