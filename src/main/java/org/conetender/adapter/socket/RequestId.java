package org.conetender.adapter.socket;

import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A line parted into its request id and the rest. Ids outlive the process, because a repeated one is
 * refused: those made here are random, so that no two lives of the daemon make the same.
 *
 * @param id as the line carries it, else a new one; empty when the line's own is no id
 * @param words the line without it
 */
record RequestId(Optional<String> id, String words) {

    private static final Pattern GIVEN = Pattern.compile("(?:^|\\s+)id=(\\S*)");
    private static final Pattern FORM = Pattern.compile("[A-Za-z0-9._:-]{1,64}");

    static RequestId of(String line) {
        Matcher m = GIVEN.matcher(line);
        if (!m.find()) {
            return new RequestId(Optional.of("socket-" + UUID.randomUUID()), line.strip());
        }
        String rest = line.substring(0, m.start()) + line.substring(m.end());
        return new RequestId(Optional.of(m.group(1)).filter(FORM.asMatchPredicate()), rest.strip());
    }
}
