package org.conetender.adapter.sqlite;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.conetender.adapter.sqlite.FileTrace.Op;

/**
 * What may lie on a disk when the power goes after so many operations. What was synced is there; of the rest
 * each write is there, or not, or in some of its sectors, whatever came after it, and each name is there or
 * not. Worse than any file system that keeps its order, and no worse than what a sync promises.
 */
final class CrashDisk {

    /** A disk writes a sector whole or not at all, bytes. */
    private static final int SECTOR = 512;
    private static final double KEPT = 0.5;
    private static final double TORN = 0.15;

    /** Names, contents by file, and all that was not synced. */
    private final Map<String, Integer> names = new TreeMap<>();
    private final Map<Integer, byte[]> contents = new HashMap<>();
    private final Map<Integer, List<Op>> writes = new HashMap<>();
    private final List<Op> folder = new ArrayList<>();

    /** The disk after that many operations. */
    CrashDisk(List<Op> ops, int after) {
        for (Op op : ops.subList(0, after)) {
            switch (op) {
                case Op.Made(String _, int file) -> {
                    contents.put(file, new byte[0]);
                    writes.put(file, new ArrayList<>());
                    folder.add(op);
                }
                case Op.Gone _, Op.Renamed _ -> folder.add(op);
                case Op.Wrote(int file, int _, byte[] _) -> writes.get(file).add(op);
                case Op.Cut(int file, int _) -> writes.get(file).add(op);
                case Op.Synced(int file) -> {
                    for (Op w : writes.get(file)) {
                        contents.put(file, applied(contents.get(file), w));
                    }
                    writes.get(file).clear();
                }
                case Op.FolderSynced _ -> {
                    folder.forEach(f -> apply(names, f));
                    folder.clear();
                }
                case Op.Said _ -> { }
            }
        }
    }

    /** One of all the states, by name of file. */
    Map<String, byte[]> state(SplittableRandom random) {
        Map<String, Integer> there = new TreeMap<>(names);
        for (Op op : folder) {
            if (random.nextDouble() < KEPT) {
                apply(there, op);
            }
        }
        Map<String, byte[]> out = new TreeMap<>();
        there.forEach((name, file) -> out.put(name, content(file, random)));
        return out;
    }

    private byte[] content(int file, SplittableRandom random) {
        byte[] b = contents.get(file);
        for (Op op : writes.get(file)) {
            double dice = random.nextDouble();
            if (dice < TORN && op instanceof Op.Wrote w) {
                b = torn(b, w, random);
            } else if (dice < TORN + KEPT) {
                b = applied(b, op);
            }
        }
        return b;
    }

    private static byte[] torn(byte[] before, Op.Wrote w, SplittableRandom random) {
        byte[] b = before;
        for (int at = 0; at < w.what().length; at += SECTOR - (w.at() + at) % SECTOR) {
            int end = Math.min(w.what().length, at + SECTOR - (w.at() + at) % SECTOR);
            if (random.nextBoolean()) {
                b = applied(b, new Op.Wrote(w.file(), w.at() + at, Arrays.copyOfRange(w.what(), at, end)));
            }
        }
        return b;
    }

    private static byte[] applied(byte[] before, Op op) {
        return switch (op) {
            case Op.Cut(int _, int length) -> Arrays.copyOf(before, length);
            case Op.Wrote(int _, int at, byte[] what) -> {
                byte[] b = Arrays.copyOf(before, Math.max(before.length, at + what.length));
                System.arraycopy(what, 0, b, at, what.length);
                yield b;
            }
            default -> throw new IllegalStateException("does not change a file: " + op);
        };
    }

    private static void apply(Map<String, Integer> names, Op op) {
        switch (op) {
            case Op.Made(String name, int file) -> names.put(name, file);
            case Op.Gone(String name) -> names.remove(name);
            case Op.Renamed(String from, String to) -> {
                Integer file = names.remove(from);
                if (file != null) {
                    names.put(to, file);
                }
            }
            default -> throw new IllegalStateException("does not change a folder: " + op);
        }
    }
}
