package org.conetender.app.cli;

/**
 * A time as it stands in a text, before its zone is known and its day is looked up in a calendar. Read by
 * hand, character by character: a formatter of the library takes ten times as long, and a log has millions.
 *
 * @param order which of day, month and year came first
 * @param date year, month and day, packed as {@link #date(int, int, int)} does; not checked
 * @param msOfDay milliseconds since midnight, below a day
 * @param offsetS seconds east of Greenwich; {@link #NO_OFFSET} if the text does not say
 */
record WrittenTime(Order order, int date, int msOfDay, int offsetS) {

    static final int NO_OFFSET = Integer.MIN_VALUE;

    /** Which of day, month and year came first. */
    enum Order {
        /** 2026-03-01. */
        YEAR_FIRST,
        /** 1.3.2026: points put the day first everywhere. */
        DAY_FIRST,
        /** 1/3/2026 or 1-3-2026: some put the day first, some the month. */
        UNCLEAR
    }

    /** @return the time; null if the text is none, in any of the orders */
    static WrittenTime scan(String text) {
        return new Scan(text).time();
    }

    static int date(int year, int month, int day) {
        return year * 10_000 + month * 100 + day;
    }

    int year() {
        return date / 10_000;
    }

    int month() {
        return date / 100 % 100;
    }

    int day() {
        return date % 100;
    }

    boolean hasOffset() {
        return offsetS != NO_OFFSET;
    }

    /** One pass over a text. A step that does not find what it needs spoils the whole. */
    private static final class Scan {

        private static final int MOST_OFFSET_S = 18 * 3_600;

        private final String text;
        private int at;
        private boolean spoilt;
        private Order order = Order.YEAR_FIRST;

        Scan(String text) {
            this.text = text;
        }

        WrittenTime time() {
            int date = digitsAhead() == 4 ? yearFirst() : yearLast();
            int gap = at;
            if (!take('T')) {
                skipBlanks();
                spoilt |= at == gap;
            }
            int ms = msOfDay();
            int offset = offset();
            return spoilt || at < text.length() ? null : new WrittenTime(order, date, ms, offset);
        }

        private int yearFirst() {
            int year = number(4);
            need('-');
            int month = number(2);
            need('-');
            return date(year, month, number(2));
        }

        private int yearLast() {
            int day = number(Math.min(2, digitsAhead()));
            char between = at < text.length() ? text.charAt(at) : ' ';
            order = between == '.' ? Order.DAY_FIRST : Order.UNCLEAR;
            spoilt |= between != '.' && between != '/' && between != '-';
            need(between);
            int month = number(Math.min(2, digitsAhead()));
            need(between);
            int digits = digitsAhead();
            spoilt |= digits != 2 && digits != 4;
            int year = number(digits == 4 ? 4 : 2);
            return date(digits == 2 ? 2_000 + year : year, month, day);
        }

        /** Hours of one digit are what spreadsheets write; seconds and their fraction may be missing. */
        private int msOfDay() {
            int hour = number(order == Order.YEAR_FIRST ? 2 : Math.min(2, digitsAhead()));
            need(':');
            int minute = number(2);
            int ms = 0;
            if (take(':')) {
                int second = number(2);
                spoilt |= second > 59;
                ms = second * 1_000 + (take('.') || take(',') ? fraction() : 0);
            }
            spoilt |= hour > 23 || minute > 59;
            return (hour * 60 + minute) * 60_000 + ms;
        }

        /** Milliseconds; finer digits are left out. */
        private int fraction() {
            int digits = digitsAhead();
            spoilt |= digits < 1 || digits > 9;
            int ms = 0;
            for (int i = 0; i < 3; i++) {
                ms = ms * 10 + (i < digits ? text.charAt(at + i) - '0' : 0);
            }
            at += digits;
            return ms;
        }

        private int offset() {
            skipBlanks();
            if (at == text.length()) {
                return NO_OFFSET;
            }
            if (take('Z')) {
                return 0;
            }
            int sign = take('-') ? -1 : 1;
            if (sign > 0) {
                need('+');
            }
            int seconds = number(2) * 3_600;
            if (take(':') || at < text.length()) {
                int minutes = number(2);
                spoilt |= minutes > 59;
                seconds += minutes * 60;
            }
            spoilt |= seconds > MOST_OFFSET_S;
            return sign * seconds;
        }

        private int digitsAhead() {
            int i = at;
            while (i < text.length() && text.charAt(i) >= '0' && text.charAt(i) <= '9') {
                i++;
            }
            return i - at;
        }

        /** Exactly so many digits. */
        private int number(int digits) {
            int value = 0;
            spoilt |= digits < 1;
            for (int i = 0; i < digits; i++) {
                char c = at < text.length() ? text.charAt(at) : ' ';
                spoilt |= c < '0' || c > '9';
                value = value * 10 + (c - '0');
                at = Math.min(text.length(), at + 1);
            }
            return value;
        }

        private void need(char c) {
            spoilt |= !take(c);
        }

        private boolean take(char c) {
            boolean there = at < text.length() && text.charAt(at) == c;
            at += there ? 1 : 0;
            return there;
        }

        private void skipBlanks() {
            while (at < text.length() && text.charAt(at) == ' ') {
                at++;
            }
        }
    }
}
