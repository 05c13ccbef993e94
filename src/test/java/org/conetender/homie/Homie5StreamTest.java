package org.conetender.homie;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.conetender.homie.Homie5Stream.Kept;
import org.conetender.homie.Homie5Stream.Said;
import org.junit.jupiter.api.Test;

/** That the listener notices what is wrong, each kind by a planted mistake. */
class Homie5StreamTest {

    private static final String ROOT = "homie/5/room/";
    private static final String CONE = "homie/5/room-a/";

    private static Said kept(String topic, String payload) {
        return new Said(topic, payload, Kept.YES);
    }

    private static Said passing(String topic, String payload) {
        return new Said(topic, payload, Kept.NO);
    }

    private static String root(int version, String children) {
        return "{\"homie\":\"5.0\",\"version\":" + version + ",\"name\":\"Room\",\"children\":[" + children
                + "]}";
    }

    private static final String CHILD = """
            {"homie":"5.0","version":1,"name":"Cone a","root":"room","nodes":{"lamp":{"properties":{
            "on":{"name":"Lamp","datatype":"boolean","settable":true},
            "share":{"name":"Share","datatype":"integer","format":"0:100"}}}}}""";

    /** A site that comes, works, is asked something, says so, and goes. */
    private static List<Said> sound() {
        return new ArrayList<>(List.of(kept(ROOT + "$state", "init"), kept(CONE + "$state", "init"),
                kept(CONE + "$description", CHILD), kept(CONE + "lamp/on", "false"),
                kept(CONE + "$state", "ready"), kept(ROOT + "$description", root(1, "\"room-a\"")),
                kept(ROOT + "$state", "ready"), passing(CONE + "lamp/on/set", "true"),
                kept(CONE + "lamp/on/$target", "true"), kept(CONE + "lamp/on", "true"),
                passing(ROOT + "$log/info", "the lamp is on"), kept(CONE + "$alert/hot", "It is hot."),
                kept(CONE + "$alert/hot", ""), kept(ROOT + "$state", "disconnected")));
    }

    private static List<String> wrong(List<Said> said) {
        return Homie5Stream.check(Map.of(), said);
    }

    /** In the midst of a sound day, while the site is ready. */
    private static List<String> planted(Said... more) {
        List<Said> all = sound();
        all.addAll(9, Arrays.asList(more));
        return wrong(all);
    }

    @Test
    void aSoundDayHasNothingWrong() {
        assertThat(wrong(sound())).isEmpty();
    }

    @Test
    void everyPayloadIsHeldAgainstItsDescription() {
        assertThat(planted(kept(CONE + "lamp/on", "yes"))).singleElement().asString().contains("lamp/on");
        assertThat(planted(kept(CONE + "lamp/share", "101"))).hasSize(1);
        assertThat(planted(kept(CONE + "lamp/colour", "red"))).singleElement().asString()
                .contains("not described");
        assertThat(planted(kept(CONE + "lamp/share/$target", "1"))).singleElement().asString()
                .contains("cannot be set");
    }

    @Test
    void aValueThatIsWrongForOneMomentIsFoundAlthoughItIsRightAfterwards() {
        assertThat(planted(kept(CONE + "lamp/share", "400"), kept(CONE + "lamp/share", "4"))).hasSize(1);
    }

    @Test
    void whatMayNotBeRetainedAndWhatMust() {
        assertThat(planted(kept(CONE + "lamp/on/set", "true"))).singleElement().asString()
                .contains("must not be retained");
        assertThat(planted(kept(ROOT + "$log/info", "so"))).hasSize(1);
        assertThat(planted(passing(CONE + "lamp/share", "4"))).singleElement().asString()
                .contains("must be retained");
        assertThat(planted(passing(CONE + "$alert/hot", "It is hot."))).hasSize(1);
        assertThat(planted(passing(ROOT + "$log/loud", "so"))).singleElement().asString().contains("level");
    }

    @Test
    void statesFollowEachOther() {
        assertThat(planted(kept(ROOT + "$state", "lost"), kept(ROOT + "$state", "ready")))
                .singleElement().asString().contains("does not follow 'lost'");
        assertThat(planted(kept(CONE + "$state", "asleep"))).isNotEmpty();
        List<Said> early = sound();
        early.add(3, kept(ROOT + "$description", root(1, "\"room-a\"")));
        early.add(4, kept(ROOT + "$state", "ready"));
        assertThat(wrong(early)).singleElement().asString().contains("before its child");
        assertThat(wrong(List.of(kept(ROOT + "$state", "ready")))).hasSize(2);
    }

    @Test
    void whatIsSaidAfterTheGoodbyeIsFound() {
        List<Said> all = sound();
        all.add(4, kept(CONE + "$state", "disconnected"));
        all.add(5, kept(CONE + "lamp/on", "true"));
        assertThat(wrong(all)).anyMatch(v -> v.contains("while the device is 'disconnected'"));
    }

    @Test
    void aDescriptionChangesOnlyWhileUnsettledAndCountsUp() {
        assertThat(planted(kept(ROOT + "$description", root(2, "\"room-a\"")))).singleElement().asString()
                .contains("changed while the device was ready");
        assertThat(planted(kept(ROOT + "$state", "init"), kept(ROOT + "$description", root(0, "\"room-a\"")),
                kept(ROOT + "$state", "ready"))).singleElement().asString().contains("version went back");
    }

    @Test
    void aChildIsTakenBackAfterItsParentNamesItNoMore() {
        List<Said> goes = List.of(kept(CONE + "$state", ""), kept(CONE + "$description", ""),
                kept(CONE + "lamp/on", ""));
        List<Said> parent = List.of(kept(ROOT + "$state", "init"), kept(ROOT + "$description", root(2, "")),
                kept(ROOT + "$state", "ready"));
        List<Said> right = sound().subList(0, 13);
        right.addAll(parent);
        right.addAll(goes);
        assertThat(wrong(right)).isEmpty();
        List<Said> early = sound().subList(0, 13);
        early.addAll(goes);
        assertThat(wrong(early)).singleElement().asString().contains("still names it");
    }
}
