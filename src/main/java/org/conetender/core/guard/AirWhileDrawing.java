package org.conetender.core.guard;

import java.util.List;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Stage;

/** Danger: air that returns while a person draws, and stirs the layer up. Announced before. */
public final class AirWhileDrawing implements Guard {

    @Override
    public String id() {
        return "air-while-drawing";
    }

    @Override
    public List<Finding> look(View v) {
        if (!(v.stage() instanceof Stage.Drawing) || !v.airBack(View.NOTICE_MS)) {
            return List.of();
        }
        return List.of(Finding.veto(id(), "its air returns in 2 min while you draw")
                .alarm(AlarmKind.AIR_DUE));
    }
}
