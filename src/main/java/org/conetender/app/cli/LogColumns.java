package org.conetender.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Where time and temperature stand in a row, and how a temperature is written.
 *
 * @param separator between fields
 * @param date index of the day, where it has a column of its own; else below 0
 * @param time index of the time  @param water index of the temperature
 * @param header whether the line this was learnt from is a header and no reading
 * @param fahrenheit whether temperatures are in °F
 */
record LogColumns(char separator, int date, int time, int water, boolean header, boolean fahrenheit) {

    /**
     * Water a cone can hold, °C. 0 is left out: it is what a broken probe's empty memory reads as
     * (control.md, finding 4), and a log in °C read as °F falls below it.
     */
    private static final double COLDEST_C = 0.5;
    private static final double WARMEST_C = 60;

    private static final double FREEZING_F = 32;
    private static final double WARMEST_F = 140;

    private static final int MOST_WHOLE_DIGITS = 4;
    private static final int MOST_DECIMALS = 9;

    /** Learns from the first line of a log. @throws BadLog with a phrase if it is no such line */
    static LogColumns of(String line, boolean fahrenheit) throws BadLog {
        char separator = separator(line);
        List<String> fields = split(line, separator);
        if (LogTimes.looksLikeOne(fields.getFirst())) {
            if (fields.size() != 2) {
                throw new BadLog("has " + columns(fields) + " and no header says which is which; "
                        + "keep two, time and temperature, or add a header");
            }
            return new LogColumns(separator, -1, 0, 1, false, fahrenheit);
        }
        return header(fields, separator, fahrenheit);
    }

    /** Of a comma's two meanings that is taken which the other signs leave to it. */
    static char separator(String line) {
        return line.indexOf(';') >= 0 ? ';' : line.strip().indexOf('\t') >= 0 ? '\t' : ',';
    }

    private static LogColumns header(List<String> fields, char separator, boolean fahrenheit) throws BadLog {
        int date = -1;
        int time = -1;
        int water = -1;
        for (int i = 0; i < fields.size(); i++) {
            String name = fields.get(i).toLowerCase(Locale.ROOT);
            if (date < 0 && (name.equals("date") || name.equals("day"))) {
                date = i;
            } else if (time < 0 && name.contains("time")) {
                time = i;
            } else if (water < 0 && (name.contains("water") || name.contains("temp"))) {
                water = i;
            }
        }
        // A column that is called plainly "time" beside a date holds the hour alone.
        boolean apart = date >= 0 && time >= 0 && fields.get(time).equalsIgnoreCase("time");
        time = time < 0 ? date : time;
        if (time < 0 || water < 0) {
            throw new BadLog("is neither a reading nor a header; a reading is a time and a temperature,"
                    + " a header names one column \"time\" and one \"water\" or \"temperature\"");
        }
        String name = fields.get(water).toLowerCase(Locale.ROOT);
        boolean saysFahrenheit = name.contains("°f") || name.contains("fahrenheit");
        boolean saysCelsius = name.contains("°c") || name.contains("celsius");
        if (fahrenheit ? saysCelsius : saysFahrenheit) {
            throw new BadLog("says \"" + fields.get(water) + "\"; " + (fahrenheit ? "leave --fahrenheit out"
                    : "say --fahrenheit"));
        }
        return new LogColumns(separator, apart ? date : -1, time, water, true, fahrenheit);
    }

    private static String columns(List<String> fields) {
        return fields.size() + (fields.size() == 1 ? " column" : " columns");
    }

    /** The fields of a line, trimmed and without quotes around them. */
    static List<String> split(String line, char separator) {
        List<String> fields = new ArrayList<>(4);
        int from = 0;
        for (int at = line.indexOf(separator); at >= 0; at = line.indexOf(separator, from)) {
            fields.add(bare(line.substring(from, at)));
            from = at + 1;
        }
        fields.add(bare(line.substring(from)));
        return fields;
    }

    private static String bare(String field) {
        String s = field.strip();
        boolean quoted = s.length() >= 2 && s.startsWith("\"") && s.endsWith("\"");
        return quoted ? s.substring(1, s.length() - 1).strip() : s;
    }

    /** When. @throws BadLog with a phrase if the row is too short */
    String when(List<String> fields) throws BadLog {
        return date < 0 ? field(fields, time) : field(fields, date) + ' ' + field(fields, time);
    }

    /** The field at that index. @throws BadLog with a phrase if the row is too short */
    String field(List<String> fields, int index) throws BadLog {
        boolean odd = !header && fields.size() != 2;
        if (odd || index >= fields.size() || fields.get(index).isEmpty()) {
            throw new BadLog(odd ? "has " + columns(fields) + ", not 2" : "has no "
                    + (index == water ? "temperature" : index == date ? "date" : "time"));
        }
        return fields.get(index);
    }

    /** °C. @throws BadLog with a phrase if it is no water temperature */
    double celsius(String text) throws BadLog {
        double value = number(separator != ',' ? text.replace(',', '.') : text);
        double c = fahrenheit ? (value - 32) / 1.8 : value;
        if (c >= COLDEST_C && c <= WARMEST_C) {
            return c;
        }
        String shown = "\"" + text + "\" is not the temperature of water in a cone";
        if (value == 85 && !fahrenheit) {
            throw new BadLog(shown + ": 85 is what a probe answers just after power-up; delete the line, or "
                    + "say --fahrenheit if the log is in °F");
        }
        String why = shown + " in " + (fahrenheit ? "°F; is the log in °C? Then leave --fahrenheit out"
                : "°C; if the log is in °F, say --fahrenheit");
        // Water that the other scale could mean is told once: so it is on every line.
        throw fahrenheit ? value > COLDEST_C && value < FREEZING_F ? BadLog.throughout(why) : new BadLog(why)
                : value > WARMEST_C && value <= WARMEST_F ? BadLog.throughout(why) : new BadLog(why);
    }

    /** Plain decimal numbers only: "1e9", "0x1p3" and "NaN" are no readings of a thermometer. */
    private static double number(String text) throws BadLog {
        boolean signed = !text.isEmpty() && (text.charAt(0) == '-' || text.charAt(0) == '+');
        int begin = signed ? 1 : 0;
        int point = text.indexOf('.');
        int end = point < 0 ? text.length() : point;
        int decimals = text.length() - Math.min(text.length(), end + 1);
        boolean plain = end > begin && end - begin <= MOST_WHOLE_DIGITS && decimals <= MOST_DECIMALS;
        // Thirteen digits and a power of ten are exact, so is their quotient.
        long digits = 0;
        double unit = 1;
        for (int i = begin; i < text.length() && plain; i++) {
            char c = text.charAt(i);
            plain = i == point || c >= '0' && c <= '9';
            if (i != point) {
                digits = digits * 10 + c - '0';
                unit = i > end ? unit * 10 : unit;
            }
        }
        if (!plain) {
            throw new BadLog("\"" + text + "\" is not a temperature; write a plain number such as 26.5");
        }
        return (signed && text.charAt(0) == '-' ? -digits : digits) / unit;
    }
}
