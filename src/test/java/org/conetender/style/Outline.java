package org.conetender.style;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The types and methods of one file, found by counting braces. An approximation that is good enough
 * for house numbers: a lambda counts with the method it stands in, an anonymous class by itself.
 */
final class Outline {

    /** @param name as {@code Outer.Inner}  @param methods how many of its own, without constructors */
    record Type(String name, boolean record, int methods, int components) {}

    /** @param name as {@code Type.method}  @param lines with signature and braces */
    record Method(String name, int lines, int parameters) {}

    private static final Pattern TYPE =
            Pattern.compile("(?<![.\\w])(class|interface|enum|record)\\s+(\\w+)\\s*(?=[<({\\s]|$)");
    private static final Pattern METHOD = Pattern.compile(
            "(?:[\\w>\\])?]\\s+|^)(\\w+)\\s*\\((.*)\\)\\s*(?:throws\\s[\\w.,\\s]+)?$", Pattern.DOTALL);

    private enum Kind { TYPE, METHOD, OTHER }

    private static final class Scope {
        private final Kind kind;
        private final String name;
        private final StringBuilder header = new StringBuilder();
        private int headerLine;
        private int parens;
        private int methods;
        private int components;
        private boolean record;
        private int firstLine;
        private int parameters;

        Scope(Kind kind, String name) {
            this.kind = kind;
            this.name = name;
        }
    }

    private final List<Type> types = new ArrayList<>();
    private final List<Method> methods = new ArrayList<>();
    private final Deque<Scope> open = new ArrayDeque<>();
    private int line = 1;

    static Outline of(SourceFile f) {
        Outline o = new Outline();
        o.open.push(new Scope(Kind.OTHER, ""));
        f.code().chars().forEach(c -> o.read((char) c));
        if (o.open.size() != 1) {
            throw new IllegalStateException(f.path() + ": braces that do not pair");
        }
        return o;
    }

    List<Type> types() {
        return types;
    }

    List<Method> methods() {
        return methods;
    }

    private void read(char c) {
        Scope s = open.peek();
        switch (c) {
            case '{' -> enter(s);
            case '}' -> leave();
            case ';' -> statement(s);
            default -> {
                s.parens += c == '(' ? 1 : c == ')' ? -1 : 0;
                if (s.header.isEmpty() && !Character.isWhitespace(c)) {
                    s.headerLine = line;
                }
                if (!s.header.isEmpty() || !Character.isWhitespace(c)) {
                    s.header.append(c);
                }
            }
        }
        line += c == '\n' ? 1 : 0;
    }

    private void statement(Scope s) {
        if (s.parens == 0) {
            if (s.kind == Kind.TYPE) {
                method(s, header(s)).ifPresent(m -> {
                    s.methods++;
                    methods.add(new Method(m.name, line - s.headerLine + 1, m.parameters));
                });
            }
            s.header.setLength(0);
        }
    }

    private void enter(Scope s) {
        String header = header(s);
        Scope next = new Scope(Kind.OTHER, s.name);
        Matcher type = TYPE.matcher(header);
        if (s.parens == 0 && type.find()) {
            next = new Scope(Kind.TYPE, s.name.isEmpty() ? type.group(2) : s.name + "." + type.group(2));
            next.record = type.group(1).equals("record");
            next.components = next.record ? Parameters.count(header.substring(type.end())) : 0;
        } else if (header.matches("(?s).*\\bnew\\s+[\\w.<>,?\\s]+\\([^{}]*\\)\\s*")) {
            next = new Scope(Kind.TYPE, s.name + ".new");
        } else if (s.kind == Kind.TYPE && s.parens == 0) {
            next = method(s, header).orElse(next);
        }
        next.firstLine = s.headerLine;
        open.push(next);
    }

    private void leave() {
        Scope done = open.pop();
        Scope around = open.peek();
        if (done.kind == Kind.TYPE) {
            types.add(new Type(done.name, done.record, done.methods, done.components));
        } else if (done.kind == Kind.METHOD) {
            methods.add(new Method(done.name, line - done.firstLine + 1, done.parameters));
            around.methods += done.name.endsWith(".<init>") ? 0 : 1;
        }
        if (around.parens == 0) {
            around.header.setLength(0);
        }
    }

    /** The header without annotations. */
    private static String header(Scope s) {
        return s.header.toString().replaceAll("@\\w+(\\s*\\((?:[^()]++|\\([^()]*\\))*+\\))?", " ").strip();
    }

    private static java.util.Optional<Scope> method(Scope type, String header) {
        Matcher m = METHOD.matcher(header);
        if (header.indexOf('(') < 0 || Parameters.assigned(header) || !m.find()) {
            return java.util.Optional.empty();
        }
        String before = header.substring(0, header.indexOf('('));
        String name = before.replaceAll("(?s).*?(\\w+)\\s*$", "$1");
        boolean constructor = type.name.equals(name) || type.name.endsWith("." + name);
        if (!constructor && !before.strip().matches("(?s).*[\\w>\\])]\\s+\\w+")) {
            return java.util.Optional.empty();
        }
        Scope s = new Scope(Kind.METHOD, type.name + "." + (constructor ? "<init>" : name));
        s.parameters = Parameters.count(header.substring(before.length()));
        return java.util.Optional.of(s);
    }
}
