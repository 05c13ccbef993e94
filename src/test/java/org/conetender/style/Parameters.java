package org.conetender.style;

/** Reads what stands between the first pair of parentheses. */
final class Parameters {

    private Parameters() {}

    /** How many stand in the first parentheses of that text. */
    static int count(String text) {
        int from = text.indexOf('(');
        int depth = 0;
        int commas = 0;
        boolean any = false;
        for (int i = from; i >= 0 && i < text.length(); i++) {
            char c = text.charAt(i);
            depth += c == '(' || c == '<' || c == '[' ? 1 : c == ')' || c == '>' || c == ']' ? -1 : 0;
            if (depth == 0) {
                break;
            }
            commas += c == ',' && depth == 1 ? 1 : 0;
            any |= i > from && !Character.isWhitespace(c);
        }
        return any ? commas + 1 : 0;
    }

    /** Whether something is assigned before the first parenthesis, so that this is a field. */
    static boolean assigned(String header) {
        int paren = header.indexOf('(');
        int equals = header.indexOf('=');
        return equals >= 0 && (paren < 0 || equals < paren);
    }
}
