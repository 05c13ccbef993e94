package org.conetender.app.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Lines that belong together, each group with its rank, fitted to a window's height. What matters least
 * goes first, and of that what stands lowest; groups go whole, so that no sentence loses its end.
 */
final class Page {

    /** In the order in which they stay: the first never goes. */
    enum Rank {
        TITLE, NOTICE, URGENT, WARNING, REMARK, CONE, READY, NEXT, WATER, ROOM, FOOT, BLANK, SPARE
    }

    private record Group(Rank rank, int place, List<String> lines) {}

    private final List<Group> groups = new ArrayList<>();

    void add(Rank rank, List<String> lines) {
        groups.add(new Group(rank, groups.size(), List.copyOf(lines)));
    }

    /**
     * Hidden lines are counted in the last row; blank and spare ones are not missed.
     *
     * @param rows at least 1
     */
    List<String> fitted(int rows) {
        List<Group> left = new ArrayList<>(groups);
        int hidden = 0;
        while (left.size() > 1 && height(left) + (hidden > 0 ? 1 : 0) > rows) {
            Group least = left.stream().filter(g -> g.rank() != Rank.TITLE)
                    .max(Comparator.comparing(Group::rank).thenComparing(Group::place)).orElseThrow();
            left.remove(least);
            hidden += least.rank().compareTo(Rank.BLANK) >= 0 ? 0 : least.lines().size();
        }
        List<String> out = new ArrayList<>();
        left.forEach(g -> out.addAll(g.lines()));
        if (hidden > 0) {
            out.add(hidden + (hidden == 1 ? " line" : " lines") + " hidden: make the window taller.");
        }
        return out.subList(0, Math.min(out.size(), rows));
    }

    private static int height(List<Group> groups) {
        return groups.stream().mapToInt(g -> g.lines().size()).sum();
    }
}
