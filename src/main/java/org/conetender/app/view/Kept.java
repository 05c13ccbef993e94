package org.conetender.app.view;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/**
 * The last picture of a site, kept while nothing newer can be had: an old one that says so serves better
 * than none. One thread.
 */
public final class Kept {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEE HH:mm:ss", Locale.ENGLISH);

    private SiteView last;
    private OffsetDateTime at;

    /** A look. One that shows no cone any more, as after a broker's restart, replaces none that did. */
    public void saw(SiteView site, OffsetDateTime now) {
        if (last == null || !site.cones().isEmpty() || last.cones().isEmpty()) {
            last = site;
            at = now;
        }
    }

    /** Whether the picture is of the last look. @param site that look */
    public boolean shows(SiteView site) {
        return site.equals(last);
    }

    /** The picture as it was last seen. @param why it is not newer, a sentence */
    public List<String> page(Screen.Frame now, String why) {
        if (last == null) {
            return Screen.wrap(why + " Trying again.", now.size().columns());
        }
        Screen.Around around = new Screen.Around(now.around().head(), why + " Trying again. This picture is "
                + "of " + at.format(TIME) + ", " + age(Duration.between(at, now.now()).toSeconds()) + " ago.",
                now.around().foot());
        return Screen.of(last, new Screen.Frame(now.size(), now.colours(), now.now(), around));
    }

    private static String age(long seconds) {
        return seconds < 120 ? Math.max(0, seconds) + " s"
                : seconds < 7_200 ? seconds / 60 + " min" : seconds / 3_600 + " h";
    }
}
