package org.conetender.core.face;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Reads one flat JSON object of strings and numbers, which is all that our settable documents hold
 * ({@link Description}). Strict after RFC 8259: anything else, a repeated name, or text behind the
 * object is an error with its place. Here and not in a library because the core has none.
 */
final class FlatJson {

    private final String text;
    private int at;

    private FlatJson(String text) {
        this.text = text;
    }

    /** Name to value; a value is a String or a Double. @throws IllegalArgumentException with a sentence */
    static Map<String, Object> read(String text) {
        return new FlatJson(text).object();
    }

    private Map<String, Object> object() {
        Map<String, Object> out = new LinkedHashMap<>();
        expect('{');
        if (peek() == '}') {
            at++;
        } else {
            do {
                String name = string();
                expect(':');
                if (out.put(name, peek() == '"' ? string() : number()) != null) {
                    throw wrong("the name '" + name + "' stands twice");
                }
            } while (next(',', '}'));
        }
        if (peek() != 0) {
            throw wrong("there is text behind the object");
        }
        return out;
    }

    /** Whether {@code more} follows rather than {@code end}. */
    private boolean next(char more, char end) {
        char c = peek();
        if (c != more && c != end) {
            throw wrong("expected '" + more + "' or '" + end + "'");
        }
        at++;
        return c == more;
    }

    private void expect(char c) {
        if (peek() != c) {
            throw wrong("expected '" + c + "'");
        }
        at++;
    }

    /** The next character that is not white space; 0 at the end. */
    private char peek() {
        while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
        return at < text.length() ? text.charAt(at) : 0;
    }

    private String string() {
        expect('"');
        StringBuilder s = new StringBuilder();
        while (at < text.length() && text.charAt(at) != '"') {
            char c = text.charAt(at++);
            if (c < 32) {
                throw wrong("a control character in a string");
            }
            s.append(c == '\\' ? escape() : c);
        }
        expect('"');
        return s.toString();
    }

    private char escape() {
        char c = at < text.length() ? text.charAt(at++) : 0;
        return switch (c) {
            case '"', '\\', '/' -> c;
            case 'b' -> '\b';
            case 'f' -> '\f';
            case 'n' -> '\n';
            case 'r' -> '\r';
            case 't' -> '\t';
            case 'u' -> unicode();
            default -> throw wrong("an unknown escape in a string");
        };
    }

    private char unicode() {
        if (at + 4 > text.length() || !text.substring(at, at + 4).matches("[0-9a-fA-F]{4}")) {
            throw wrong("\\u needs four hexadecimal digits");
        }
        at += 4;
        return (char) Integer.parseInt(text.substring(at - 4, at), 16);
    }

    private Double number() {
        int start = at;
        while (at < text.length() && "+-.eE0123456789".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
        String n = text.substring(start, at);
        if (!n.matches("-?(0|[1-9][0-9]*)(\\.[0-9]+)?([eE][+-]?[0-9]+)?")) {
            throw wrong("expected a number or a string");
        }
        return Double.valueOf(n);
    }

    private IllegalArgumentException wrong(String what) {
        return new IllegalArgumentException(what + " at character " + (at + 1));
    }
}
