package org.conetender.homie;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A property's datatype: which formats it may have, and which payloads fit a format. */
enum Datatype {
    INTEGER, FLOAT, BOOLEAN, STRING, ENUM, COLOR, DATETIME, DURATION, JSON;

    static final ObjectMapper MAPPER = new ObjectMapper()
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY);

    private static final SchemaRegistry SCHEMAS =
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
    private static final Pattern WHOLE = Pattern.compile("-?\\d+");
    private static final Pattern DECIMAL = Pattern.compile("-?(\\d+(\\.\\d*)?|\\.\\d+)([eE]-?\\d+)?");
    private static final Pattern RANGE = Pattern.compile("([^:]*):([^:]*)(?::([^:]*))?");
    private static final Pattern DURATION_FORM =
            Pattern.compile("PT(?=\\d)(\\d+H)?(\\d+M)?(\\d+(\\.\\d+)?S)?");

    static Optional<Datatype> named(String name) {
        return List.of(values()).stream().filter(type -> type.id().equals(name)).findFirst();
    }

    String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** What is wrong with a format of this datatype; empty when nothing is. */
    Optional<String> wrongFormat(Optional<String> format) {
        return switch (this) {
            case INTEGER, FLOAT -> format.flatMap(this::wrongRange);
            case BOOLEAN -> format.flatMap(Datatype::wrongLabels);
            case ENUM -> format.map(Datatype::wrongList).orElse(Optional.of("an enum needs a format"));
            case COLOR -> format.map(Datatype::wrongColors).orElse(Optional.of("a color needs a format"));
            case JSON -> format.flatMap(Datatype::wrongSchema);
            case STRING, DATETIME, DURATION -> format.map(any -> "a " + id() + " has no format");
        };
    }

    /** What is wrong with a payload, given a format that is not wrong; empty when nothing is. */
    Optional<String> wrongPayload(String payload, Optional<String> format) {
        return switch (this) {
            case INTEGER, FLOAT -> isNumber(payload)
                    ? format.flatMap(range -> outOfRange(new BigDecimal(payload), range))
                    : no("'" + payload + "' is not of type " + id());
            case BOOLEAN -> unless(payload.equals("true") || payload.equals("false"), payload, "a boolean");
            case STRING -> Optional.empty();
            case ENUM -> unless(List.of(format.orElse("").split(",", -1)).contains(payload), payload,
                    "one of " + format.orElse(""));
            case COLOR -> unless(isColor(payload, format.orElse("")), payload,
                    "a color of " + format.orElse(""));
            case DATETIME -> unless(isDatetime(payload), payload, "an ISO 8601 date and time");
            case DURATION -> unless(DURATION_FORM.matcher(payload).matches(), payload, "a duration");
            case JSON -> wrongJson(payload, format);
        };
    }

    private boolean isNumber(String text) {
        if (this == INTEGER) {
            return WHOLE.matcher(text).matches() && new BigInteger(text).bitLength() <= 63;
        }
        return DECIMAL.matcher(text).matches() && Double.isFinite(Double.parseDouble(text));
    }

    private Optional<String> wrongRange(String format) {
        Matcher parts = RANGE.matcher(format);
        if (!parts.matches()) {
            return no("'" + format + "' is not min:max:step");
        }
        for (int i = 1; i <= 3; i++) {
            String part = parts.group(i);
            if (part != null && !(part.isEmpty() && i < 3) && !isNumber(part)) {
                return no("'" + part + "' in the format '" + format + "' is not of type " + id());
            }
        }
        String min = parts.group(1);
        String max = parts.group(2);
        if (!min.isEmpty() && !max.isEmpty() && new BigDecimal(min).compareTo(new BigDecimal(max)) > 0) {
            return no("the format '" + format + "' has its minimum above its maximum");
        }
        boolean steps = parts.group(3) == null || new BigDecimal(parts.group(3)).signum() > 0;
        return steps ? Optional.empty() : no("the step of '" + format + "' is not above 0");
    }

    private static Optional<String> outOfRange(BigDecimal value, String format) {
        Matcher parts = RANGE.matcher(format);
        if (!parts.matches()) {
            return Optional.empty();
        }
        String min = parts.group(1);
        String max = parts.group(2);
        boolean inside = (min.isEmpty() || value.compareTo(new BigDecimal(min)) >= 0)
                && (max.isEmpty() || value.compareTo(new BigDecimal(max)) <= 0);
        if (!inside) {
            return no(value.toPlainString() + " is outside " + format);
        }
        String base = min.isEmpty() ? max : min;
        boolean onStep = parts.group(3) == null || base.isEmpty() || value.subtract(new BigDecimal(base))
                .remainder(new BigDecimal(parts.group(3))).signum() == 0;
        return onStep ? Optional.empty() : no(value.toPlainString() + " is not on a step of " + format);
    }

    private static Optional<String> wrongLabels(String format) {
        String[] labels = format.split(",", -1);
        boolean two = labels.length == 2 && !labels[0].isEmpty() && !labels[1].isEmpty()
                && !labels[0].equals(labels[1]);
        return two ? Optional.empty() : no("'" + format + "' is not two labels for false and true");
    }

    private static Optional<String> wrongList(String format) {
        List<String> values = List.of(format.split(",", -1));
        if (values.contains("")) {
            return no("the enum '" + format + "' has an empty value");
        }
        return Set.copyOf(values).size() == values.size()
                ? Optional.empty() : no("the enum '" + format + "' has a value twice");
    }

    private static Optional<String> wrongColors(String format) {
        List<String> kinds = List.of(format.split(",", -1));
        boolean known = Set.of("rgb", "hsv", "xyz").containsAll(kinds)
                && Set.copyOf(kinds).size() == kinds.size();
        return known ? Optional.empty() : no("'" + format + "' is not a list of rgb, hsv, xyz");
    }

    private static Optional<String> wrongSchema(String format) {
        try {
            JsonNode schema = MAPPER.readTree(format);
            if (!schema.isObject()) {
                return no("the JSON schema is not an object");
            }
            List<Error> errors = SCHEMAS.getSchema(
                    SchemaLocation.of(SpecificationVersion.DRAFT_2020_12.getDialectId())).validate(schema);
            return errors.isEmpty() ? Optional.empty() : no("the JSON schema is none: " + errors);
        } catch (JsonProcessingException e) {
            return no("the JSON schema does not parse: " + e.getOriginalMessage());
        }
    }

    private static Optional<String> wrongJson(String payload, Optional<String> format) {
        try {
            JsonNode value = MAPPER.readTree(payload);
            if (!value.isContainerNode()) {
                return no("'" + payload + "' is neither a JSON object nor an array");
            }
            if (format.isEmpty()) {
                return Optional.empty();
            }
            List<Error> errors = SCHEMAS.getSchema(MAPPER.readTree(format.get())).validate(value);
            return errors.isEmpty() ? Optional.empty()
                    : no("'" + payload + "' against its schema: " + errors);
        } catch (JsonProcessingException e) {
            return no("'" + payload + "' does not parse: " + e.getOriginalMessage());
        }
    }

    private static boolean isColor(String payload, String format) {
        String[] parts = payload.split(",", -1);
        if (!List.of(format.split(",")).contains(parts[0])
                || parts.length != (parts[0].equals("xyz") ? 3 : 4)) {
            return false;
        }
        for (int i = 1; i < parts.length; i++) {
            double most = switch (parts[0]) {
                case "rgb" -> 255;
                case "hsv" -> i == 1 ? 360 : 100;
                default -> 1;
            };
            if (!FLOAT.isNumber(parts[i]) || !(Double.parseDouble(parts[i]) >= 0)
                    || Double.parseDouble(parts[i]) > most) {
                return false;
            }
        }
        return true;
    }

    private static boolean isDatetime(String payload) {
        return parses(() -> OffsetDateTime.parse(payload)) || parses(() -> LocalDateTime.parse(payload))
                || parses(() -> LocalDate.parse(payload));
    }

    private static boolean parses(Runnable parse) {
        try {
            parse.run();
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }

    private static Optional<String> unless(boolean fits, String payload, String kind) {
        return fits ? Optional.empty() : no("'" + payload + "' is not " + kind);
    }

    private static Optional<String> no(String reason) {
        return Optional.of(reason);
    }
}
