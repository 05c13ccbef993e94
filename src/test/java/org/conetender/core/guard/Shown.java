package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.Larkmoor;
import org.conetender.core.Story;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.image.Image;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.LevelTrack;
import org.conetender.core.judge.Water;
import org.conetender.core.settings.Settings;

/**
 * What the guards of cone a are shown in a story, to be changed in one thing: for limits that a story meets
 * to the tick only by luck.
 */
final class Shown implements Guard {

    /** Beyond what any story comes to. */
    private static long seq = 1_000_000;

    private View last;

    @Override
    public String id() {
        return "shown";
    }

    @Override
    public List<Finding> look(View v) {
        last = v.cone().id().equals("a") ? v : last;
        return List.of();
    }

    Story story(Larkmoor.Fitting... fittings) {
        return story(Larkmoor.with(fittings));
    }

    Story story(Settings settings) {
        List<Guard> all = new ArrayList<>(Guards.ALL);
        all.add(this);
        return new Story(settings, all);
    }

    /** As it was in the last tick. */
    View view() {
        return last;
    }

    static View with(View v, ConeJudgement j) {
        return new View(v.settings(), v.cone(), v.book(), v.coneBook(), j, v.scene());
    }

    private static View with(View v, View.Scene s) {
        return new View(v.settings(), v.cone(), v.book(), v.coneBook(), v.judged(), s);
    }

    /** The water is believed to be so warm. */
    static View water(View v, double c) {
        return water(v, new Belief.Trusted(c));
    }

    static View water(View v, Belief b) {
        ConeJudgement j = v.judged();
        Water w = j.water();
        return with(v, new ConeJudgement(new Water(w.lastC(), w.lastAtMs(), w.trail(), w.doubt(),
                w.departures(), b, w.voices()), j.roomC(), j.level(), j.heat(), j.thermal(), j.air(),
                j.motion(), j.tried()));
    }

    static View level(View v, Level level) {
        ConeJudgement j = v.judged();
        return with(v, new ConeJudgement(j.water(), j.roomC(), new LevelTrack(level, 0), j.heat(),
                j.thermal(), j.air(),
                j.motion(), j.tried()));
    }

    /** Heat has been off for so long. */
    static View heatOff(View v, long ms) {
        ConeJudgement j = v.judged();
        HeatTrack h = j.heat();
        return with(v, new ConeJudgement(j.water(), j.roomC(), j.level(), new HeatTrack(ms, h.calmForMs(),
                h.lowestOffC(), h.rise(), h.window(), h.way(), h.responded(), h.failed()), j.thermal(),
                j.air(), j.motion(), j.tried()));
    }

    static View air(View v, AirTrack a) {
        ConeJudgement j = v.judged();
        return with(v, new ConeJudgement(j.water(), j.roomC(), j.level(), j.heat(), j.thermal(), a,
                j.motion(), j.tried()));
    }

    /** The tick begins so late. */
    static View late(View v, long ms) {
        Image.Pipes p = v.scene().image().pipes();
        return with(v, new Image.Pipes(p.store(), p.history(), p.broker(), ms, p.unset()));
    }

    private static View with(View v, Image.Pipes p) {
        Image i = v.scene().image();
        View.Scene s = v.scene();
        return with(v, new View.Scene(new Image(i.now(), i.probes(), i.contacts(), i.inbox(), p), s.begun(),
                s.wants(), s.site(), s.beside(), s.caps(), s.unwritten()));
    }

    /** So much later, though nothing else has happened. */
    static View later(View v, long ms) {
        Image i = v.scene().image();
        View.Scene s = v.scene();
        return with(v, new View.Scene(new Image(i.now().plusMs(ms), i.probes(), i.contacts(), i.inbox(),
                i.pipes()), s.begun(), s.wants(), s.site(), s.beside(), s.caps(), s.unwritten()));
    }

    static View wants(View v, View.Wants wants) {
        View.Scene s = v.scene();
        return with(v, new View.Scene(s.image(), s.begun(), wants, s.site(), s.beside(), s.caps(),
                s.unwritten()));
    }

    static View site(View v, double wattsBefore, long untrustedMs) {
        View.Scene s = v.scene();
        return with(v, new View.Scene(s.image(), s.begun(), s.wants(), new View.SiteLoad(wattsBefore,
                untrustedMs), s.beside(), s.caps(), s.unwritten()));
    }

    static View caps(View v, View.Caps caps) {
        View.Scene s = v.scene();
        return with(v, new View.Scene(s.image(), s.begun(), s.wants(), s.site(), s.beside(), caps,
                s.unwritten()));
    }

    /** With that in the book of a cone. */
    static View noting(View v, String cone, Change c) {
        Book next = v.book().after(new Fact(++seq, v.now(), cone, "", c));
        return new View(v.settings(), v.cone(), next, next.cone(v.cone().id()), v.judged(), v.scene());
    }

    static View beside(View v, Beside beside) {
        View.Scene s = v.scene();
        return with(v, new View.Scene(s.image(), s.begun(), s.wants(), s.site(), beside, s.caps(),
                s.unwritten()));
    }
}
