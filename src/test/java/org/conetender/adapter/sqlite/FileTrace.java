package org.conetender.adapter.sqlite;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/**
 * What a real process did to the files of one folder, and what it said meanwhile, in order: recorded by the
 * kernel through {@code strace}, without any help of the process. A file is a number that outlives its names.
 * What lies in shared memory ({@code -shm}) does not outlive a power cut and is left out.
 */
final class FileTrace {

    /** One operation. */
    sealed interface Op {
        /** A name for a new file. */
        record Made(String name, int file) implements Op {}

        record Gone(String name) implements Op {}

        record Renamed(String from, String to) implements Op {}

        record Wrote(int file, int at, byte[] what) implements Op {}

        record Cut(int file, int length) implements Op {}

        record Synced(int file) implements Op {}

        record FolderSynced() implements Op {}

        record Said(String line) implements Op {}
    }

    private static final String CALLS =
            "openat,pwrite64,write,ftruncate,fsync,fdatasync,unlink,rename,renameat2";
    /** Longer than any page or line that is written. */
    private static final String LONGEST = "200000";

    private final String root;
    private final List<Op> ops = new ArrayList<>();
    private final Map<String, Integer> names = new TreeMap<>();
    private final Map<String, String> unfinished = new HashMap<>();
    private final StringBuilder said = new StringBuilder();
    private int files;

    /** Begins with what lies in the folder, as if it had lain there for ever. */
    FileTrace(Path folder) throws IOException {
        this.root = folder.toRealPath() + "/";
        try (var all = Files.list(folder)) {
            for (Path p : all.sorted().toList()) {
                String name = p.getFileName().toString();
                if (!name.endsWith("-shm")) {
                    ops.add(new Op.Made(name, files));
                    ops.add(new Op.Wrote(files, 0, Files.readAllBytes(p)));
                    ops.add(new Op.Synced(files));
                    names.put(name, files++);
                }
            }
        }
        ops.add(new Op.FolderSynced());
    }

    List<Op> ops() {
        return ops;
    }

    /** Runs that class and adds what it does. */
    FileTrace run(Path log, Class<?> main, String... args) throws Exception {
        return run(log, List.of(), main, args);
    }

    /** @param more for {@code strace}, such as calls that fail */
    FileTrace run(Path log, List<String> more, Class<?> main, String... args) throws Exception {
        List<String> words = new ArrayList<>(List.of("strace", "-f", "-qq", "-y", "-xx", "-s", LONGEST,
                "--seccomp-bpf", "-e", "trace=" + CALLS, "-o", log.toString()));
        words.addAll(more);
        words.addAll(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED", "-XX:TieredStopAtLevel=1", "-Xmx64m", "-cp",
                System.getProperty("java.class.path"), main.getName()));
        words.addAll(List.of(args));
        Process p = new ProcessBuilder(words).redirectErrorStream(true).start();
        String out = new String(p.getInputStream().readAllBytes(), UTF_8);
        if (!p.waitFor(120, TimeUnit.SECONDS) || p.exitValue() != 0) {
            throw new IllegalStateException("the traced process ended with " + p + ": " + out);
        }
        try (BufferedReader r = Files.newBufferedReader(log, ISO_8859_1)) {
            for (String line = r.readLine(); line != null; line = r.readLine()) {
                line(line);
            }
        }
        return this;
    }

    /** A call of one thread may be told in two pieces, when another came in between. */
    private void line(String line) {
        int space = line.indexOf(' ');
        String thread = line.substring(0, space);
        String rest = line.substring(space).strip();
        if (rest.endsWith(" <unfinished ...>")) {
            unfinished.put(thread, rest.substring(0, rest.length() - " <unfinished ...>".length()));
            return;
        }
        if (rest.startsWith("<... ")) {
            String before = unfinished.remove(thread);
            rest = before + rest.substring(rest.indexOf('>') + 1);
        }
        int result = rest.lastIndexOf(" = ");
        int open = rest.indexOf('(');
        if (open > 0 && result > open && !rest.startsWith("-", result + 3)) {
            call(rest.substring(0, open), rest.substring(open + 1, rest.lastIndexOf(')', result)));
        }
    }

    private void call(String name, String args) {
        switch (name) {
            case "openat" -> opened(text(quoted(args, 0)), args);
            case "unlink" -> gone(text(quoted(args, 0)));
            case "rename", "renameat2" -> renamed(text(quoted(args, 0)), text(quoted(args, 1)));
            case "fsync", "fdatasync" -> synced(path(args));
            case "ftruncate" -> file(path(args)).ifPresent(f -> ops.add(new Op.Cut(f, last(args))));
            case "pwrite64" -> file(path(args)).ifPresent(f -> ops.add(
                    new Op.Wrote(f, last(args), bytes(quoted(args, 0)))));
            case "write" -> {
                if (file(path(args)).isPresent()) {
                    throw new IllegalStateException("a write whose place is not known: " + path(args));
                }
                if (args.startsWith("1<")) {
                    said(text(quoted(args, 0)));
                }
            }
            default -> { }
        }
    }

    private void said(String what) {
        said.append(what);
        for (int end = said.indexOf("\n"); end >= 0; end = said.indexOf("\n")) {
            ops.add(new Op.Said(said.substring(0, end)));
            said.delete(0, end + 1);
        }
    }

    private void opened(String path, String args) {
        String name = name(path);
        if (name.isEmpty() || !args.contains("O_CREAT") && !names.containsKey(name)) {
            return;
        }
        if (!names.containsKey(name)) {
            ops.add(new Op.Made(name, files));
            names.put(name, files++);
        } else if (args.contains("O_TRUNC")) {
            ops.add(new Op.Cut(names.get(name), 0));
        }
    }

    private void gone(String path) {
        if (names.remove(name(path)) != null) {
            ops.add(new Op.Gone(name(path)));
        }
    }

    private void renamed(String from, String to) {
        Integer file = names.remove(name(from));
        if (file != null) {
            names.put(name(to), file);
            ops.add(new Op.Renamed(name(from), name(to)));
        }
    }

    private void synced(String path) {
        if ((path + "/").equals(root)) {
            ops.add(new Op.FolderSynced());
        } else {
            file(path).ifPresent(f -> ops.add(new Op.Synced(f)));
        }
    }

    private Optional<Integer> file(String path) {
        return Optional.ofNullable(names.get(name(path)));
    }

    /** The name in the folder; empty for what lies elsewhere, or does not count. */
    private String name(String path) {
        return path.startsWith(root) && !path.endsWith("-shm") ? path.substring(root.length()) : "";
    }

    private static String path(String args) {
        int open = args.indexOf('<');
        int close = args.indexOf('>', open);
        return open < 0 || close < 0 ? "" : text(args.substring(open + 1, close));
    }

    private static String quoted(String args, int which) {
        int from = -1;
        int to = -1;
        for (int i = 0; i <= which; i++) {
            from = args.indexOf('"', to + 1);
            to = args.indexOf('"', from + 1);
        }
        return args.substring(from + 1, to);
    }

    private static int last(String args) {
        return Integer.parseInt(args.substring(args.lastIndexOf(',') + 1).strip());
    }

    private static String text(String escaped) {
        return new String(bytes(escaped), UTF_8);
    }

    private static byte[] bytes(String escaped) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(escaped.length() / 4 + 1);
        for (int i = 0; i < escaped.length(); i++) {
            if (escaped.charAt(i) == '\\' && escaped.charAt(i + 1) == 'x') {
                out.write(Integer.parseInt(escaped, i + 2, i + 4, 16));
                i += 3;
            } else {
                out.write(escaped.charAt(i));
            }
        }
        return out.toByteArray();
    }
}
