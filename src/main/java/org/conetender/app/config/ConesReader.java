package org.conetender.app.config;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.conetender.core.settings.Cone;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;

/** Reads the list of {@code [[cone]]}: how many there are, and that each has a name of its own. */
final class ConesReader {

    /** More than these no tick, person or board was meant for; *guess*. */
    private static final int MOST = 16;

    /** More than these of one id are not counted out; their lines are told anyway. */
    private static final List<String> ORDINALS = List.of("first", "second", "third", "fourth");

    static final String HOW = "cones are a list: write [[cone]] with two brackets, once for each";

    private final Section root;
    private final String siteId;
    private final LineBook lines;
    private final Ids ids;
    private final Map<String, Integer> seen = new HashMap<>();

    ConesReader(Section root, String siteId, LineBook lines, Ids ids) {
        this.root = root;
        this.siteId = siteId;
        this.lines = lines;
        this.ids = ids;
    }

    List<Cone> read() {
        List<Cone> cones = new ArrayList<>();
        switch (root.raw("cone")) {
            case null -> root.wrong("cone", "there is no cone to look after; begin one with [[cone]]");
            case TomlArray array -> readAll(array, cones);
            default -> root.wrong("cone", HOW);
        }
        return cones;
    }

    private void readAll(TomlArray array, List<Cone> cones) {
        if (array.isEmpty()) {
            root.wrong("cone", "there is no cone to look after; begin one with [[cone]]");
        }
        List<Fields> read = new ArrayList<>();
        for (int i = 0; i < array.size(); i++) {
            if (!(array.get(i) instanceof TomlTable table)) {
                root.wrong("cone", HOW);
                return;
            }
            Fields cone = fields(i, table, array);
            cones.add(cone(i, cone));
            read.add(cone);
        }
        for (int i = 0; i < cones.size(); i++) {
            touching(read.get(i).sub("vessel").at(), cones.get(i), cones);
        }
    }

    /** A cone that touches what is not there would go unwatched for nothing. */
    private static void touching(Section vessel, Cone cone, List<Cone> all) {
        for (String id : cone.fittings().vessel().touches()) {
            if (id.equals(cone.id())) {
                vessel.wrong("touches", "no cone touches itself; name the others, or leave the line out");
            } else if (all.stream().noneMatch(c -> c.id().equals(id))) {
                vessel.wrong("touches", "there is no cone " + Shown.quoted(id) + "; the cones are "
                        + String.join(", ", all.stream().map(Cone::id).toList()));
            }
        }
    }

    /** Until its id is known to be good, a cone is shown by its place in the list. */
    private static String shown(int index, Object id) {
        return id instanceof String s && Ids.isId(s) ? s : "#" + (index + 1);
    }

    /** Which one of them, where several cones have one id: the id alone would not say it. */
    private static String which(int index, TomlArray array) {
        List<Object> ids = array.toList().stream()
                .map(o -> o instanceof TomlTable t ? t.get(List.of("id")) : null).toList();
        if (!(ids.get(index) instanceof String id) || !Ids.isId(id) || Collections.frequency(ids, id) < 2) {
            return "";
        }
        int before = Collections.frequency(ids.subList(0, index), id);
        return before < ORDINALS.size() ? "the " + ORDINALS.get(before) + " " : "a further ";
    }

    private Fields fields(int index, TomlTable table, TomlArray array) {
        return new Fields(new Section(
                new Section.Place("cone", which(index, array) + "cone["
                        + shown(index, table.get(List.of("id"))) + "]", index + 1, false),
                table, array.inputPositionOf(index), root.findings()));
    }

    private Cone cone(int index, Fields cone) {
        UnknownKeys.walk(cone.at());
        Ids.id(cone, "id").ifPresent(id -> name(cone, id));
        if (index == MOST) {
            cone.at().wrong("id", "this is cone " + (MOST + 1) + "; one daemon looks after at most " + MOST
                    + ": run a second one on a board of its own");
        }
        return new ConeReader(cone, shown(index, cone.at().raw("id")), lines, ids).read();
    }

    private void name(Fields cone, String id) {
        Ids.reserved(cone, id, siteId);
        int line = cone.at().position("id").line();
        Integer before = seen.putIfAbsent(id, line);
        if (before != null) {
            cone.at().wrong("id", "the cone of line " + before + " has this id already; give each "
                    + "cone its own");
        }
    }
}
