package org.conetender.app.config;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What to write for a figure that stands with a unit: the figure alone where the unit is the setting's own,
 * the converted one where it is of the same kind, and none at all where nobody can tell.
 */
final class WrittenUnit {

    /** Figures of a conversion; nobody measures more of them. */
    private static final MathContext SHOWN = new MathContext(6);

    /** The Fahrenheit scale: 32 at 0 °C, 1.8 of its degrees in a kelvin (its definition). */
    private static final BigDecimal ICE_F = new BigDecimal(32);
    private static final BigDecimal F_IN_K = new BigDecimal("1.8");
    /** 0 °C in kelvin (its definition). */
    private static final BigDecimal ICE_K = new BigDecimal("273.15");

    /** Units of one kind and how much of the first each is, by the definitions of the SI and the inch. */
    private static final List<Map<String, BigDecimal>> KINDS = List.of(
            kind("cm 1", "mm 0.1", "m 100", "in 2.54", "inch 2.54", "inches 2.54"),
            kind("L 1", "l 1", "litre 1", "litres 1", "liter 1", "liters 1", "ml 0.001", "mL 0.001",
                    "cl 0.01", "cL 0.01", "dl 0.1", "dL 0.1"),
            kind("W 1", "w 1", "watt 1", "watts 1", "kW 1000", "kw 1000", "KW 1000", "mW 0.001"),
            kind("s 1", "sec 1", "second 1", "seconds 1", "ms 0.001", "min 60", "mins 60", "minute 60",
                    "minutes 60", "h 3600", "hr 3600", "hrs 3600", "hour 3600", "hours 3600"),
            kind("g 1", "gram 1", "grams 1", "kg 1000", "mg 0.001"),
            kind("ppt 1", "‰ 1", "g/kg 1", "% 10"),
            kind("cycles 1", "cycle 1"));

    private static final List<String> CELSIUS = List.of("°C", "C", "c", "°c");

    private final String key;
    private final String figure;
    private final String unit;

    private WrittenUnit(String key, String figure, String unit) {
        this.key = key;
        this.figure = figure;
        // Some keyboards have the sign of an ordinal number where others have the degree.
        this.unit = unit.replace('º', '°');
    }

    private static Map<String, BigDecimal> kind(String... units) {
        return Stream.of(units).map(u -> u.split(" ")).collect(Collectors.toUnmodifiableMap(
                u -> u[0], u -> new BigDecimal(u[1])));
    }

    /** One sentence. @param key as it stands in the file, may be dotted @param figure comma as typed */
    static String remedy(String key, String figure, String unit) {
        String name = key.substring(key.lastIndexOf('.') + 1);
        List<SettingDoc> docs = SettingDocs.all().stream().filter(d -> d.name().equals(name)).toList();
        if (docs.isEmpty()) {
            // The nearest name may want another unit than the one meant: no figure is said to belong there.
            return "a figure stands without its unit, and there is no setting " + name
                    + "; check --explain lists them all";
        }
        // A name that several sections have is of one unit in all of them.
        SettingDoc doc = docs.getFirst();
        return doc.unit().isEmpty() ? "this has no unit; it must be " + doc.range()
                : new WrittenUnit(key, figure, unit).in(name, doc.unit());
    }

    private String in(String name, String own) {
        if (figure.matches(".*,\\d{3}")) {
            return name + " is in " + own + "; " + figure + " may be " + figure.replace(',', '.') + " or "
                    + figure.replace(",", "") + " " + unit + ": write the figure in " + own
                    + ", with a point and no comma, without a unit";
        }
        String plain = figure.replace(',', '.');
        // "cycles a day" are written as cycles.
        String base = own.split(" ")[0];
        Optional<BigDecimal> ours = converted(new BigDecimal(plain), base);
        if (ours.isEmpty()) {
            return name + " is in " + own + ", not in " + unit + "; write the figure in " + own
                    + ", without a unit";
        }
        if (isSame(base)) {
            return "a figure stands without its unit; write " + key + " = " + plain;
        }
        String shown = ours.get().round(SHOWN).stripTrailingZeros().toPlainString();
        return name + " is in " + own + ": " + plain + " " + unit + " are " + shown + "; write " + key + " = "
                + shown;
    }

    private boolean isSame(String own) {
        return CELSIUS.contains(own) ? CELSIUS.contains(unit)
                : KINDS.stream().anyMatch(k -> k.containsKey(own) && k.get(own).equals(k.get(unit)));
    }

    /** In the setting's own unit; empty where the unit is not known, or is of another kind. */
    private Optional<BigDecimal> converted(BigDecimal x, String own) {
        if (CELSIUS.contains(own)) {
            return switch (unit) {
                case "°F", "F" -> Optional.of(x.subtract(ICE_F).divide(F_IN_K, MathContext.DECIMAL64));
                case "K" -> Optional.of(x.subtract(ICE_K));
                default -> Optional.of(x).filter(same -> CELSIUS.contains(unit));
            };
        }
        return KINDS.stream().filter(k -> k.containsKey(own) && k.containsKey(unit)).findFirst()
                .map(k -> x.multiply(k.get(unit)).divide(k.get(own), MathContext.DECIMAL64));
    }
}
