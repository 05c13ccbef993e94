package org.conetender.app.cli;

import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What was typed and is no command: one sentence, and where more stands. The whole help would bury it. */
public final class Misunderstood implements IParameterExceptionHandler {

    @Override
    public int handleParseException(ParameterException e, String[] args) {
        CommandLine at = e.getCommandLine();
        PrintWriter err = at.getErr();
        err.println(Places.sentence(words(e)));
        err.println("See " + at.getCommandSpec().qualifiedName() + " --help.");
        err.flush();
        return at.getCommandSpec().exitCodeOnInvalidInput();
    }

    private static String words(ParameterException e) {
        if (e instanceof UnmatchedArgumentException u) {
            return unknown(u);
        }
        if (e instanceof MissingParameterException m && !m.getMissing().isEmpty()) {
            boolean oneOf = m.getMissing().stream().allMatch(a -> a.group() != null && a.group().exclusive());
            String all = m.getMissing().stream().map(Misunderstood::whole)
                    .collect(Collectors.joining(oneOf ? ", " : " and "));
            return oneOf ? "One of these is missing: " + all
                    : all + (m.getMissing().size() == 1 ? " is missing" : " are missing");
        }
        if (e.getArgSpec() == null || e.getValue() == null || e.getCause() == null) {
            return e.getMessage();
        }
        return name(e.getArgSpec()) + " takes " + kind(e.getArgSpec().typeInfo().getType()) + ", not '"
                + e.getValue() + "'";
    }

    private static String unknown(UnmatchedArgumentException u) {
        boolean command = !u.getCommandLine().getSubcommands().isEmpty();
        String typed = u.getUnmatched().getFirst();
        List<String> near = u.getSuggestions();
        String what = typed.startsWith("-") ? "There is no option " + typed
                : command ? "There is no command '" + typed + "'" : "'" + typed + "' is one word too many";
        return what + (near.isEmpty() ? "" : "; did you mean " + near.getFirst() + "?");
    }

    private static String name(ArgSpec arg) {
        return arg instanceof OptionSpec o ? o.longestName() : arg.paramLabel();
    }

    private static String whole(ArgSpec arg) {
        boolean flag = arg.arity().max() == 0;
        return arg instanceof OptionSpec o && !flag ? o.longestName() + " " + o.paramLabel() : name(arg);
    }

    private static String kind(Class<?> type) {
        if (type == ZoneId.class) {
            return "a time zone such as Europe/London";
        }
        if (type == URI.class) {
            return "an address such as mqtt://pi.local:1883";
        }
        if (type == Path.class) {
            return "the path of a file";
        }
        if (type.isEnum()) {
            return "one of " + Arrays.stream(type.getEnumConstants()).map(Object::toString)
                    .collect(Collectors.joining(", "));
        }
        return type == double.class || type == Double.class ? "a number such as 2.5"
                : "a whole number such as 20";
    }
}
