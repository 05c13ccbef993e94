package org.conetender.core.face;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * How every device was described last, folded from the record, so that a version only ever rises (mqtt.md)
 * and a cone that is configured no longer can be taken back from the broker.
 */
public final class Versions {

    /** Last description by device id; the fact's cone is the cone it describes, empty for the root. */
    private final Map<String, Fact> last = new TreeMap<>();

    private Versions() {}

    /** As these facts leave them. */
    public static Versions of(List<Fact> facts) {
        Versions v = new Versions();
        for (Fact f : facts) {
            if (f.change() instanceof Change.Described d) {
                v.last.put(d.device(), f);
            }
        }
        return v;
    }

    /**
     * What a life has to write down of its descriptions before it publishes them: nothing where each is as
     * it was.
     *
     * @param seq number of the first fact
     */
    public List<Fact> due(Settings settings, Moment now, long seq) {
        Map<String, String> described = new TreeMap<>();
        settings.cones().forEach(c -> described.put(c.id(), Description.cone(settings, c, 0)));
        described.put("", Description.root(settings, 0));
        List<Fact> out = new ArrayList<>();
        described.forEach((cone, text) -> {
            String device = device(settings, cone);
            String digest = digest(text);
            if (!last.containsKey(device) || !as(last.get(device)).digest().equals(digest)) {
                out.add(new Fact(seq + out.size(), now, cone, "",
                        new Change.Described(device, next(device, now), digest)));
            }
        });
        return List.copyOf(out);
    }

    /**
     * The seconds since 1970 where the clock is trusted, so that a record that was lost and begun anew does
     * not count below what still lies at a broker; always above the last one.
     */
    private long next(String device, Moment now) {
        long above = last.containsKey(device) ? as(last.get(device)).version() + 1 : 1;
        return now.wallTrusted() ? Math.max(above, now.wallMs() / Units.SECOND_MS) : above;
    }

    /** The version under which that cone is described, the site for the empty id; 0 before any. */
    public long version(Settings settings, String cone) {
        Fact f = last.get(device(settings, cone));
        return f == null ? 0 : as(f).version();
    }

    /** Cones that were described under this site and are configured no longer. */
    public List<String> gone(Settings settings) {
        List<String> out = new ArrayList<>();
        last.forEach((device, f) -> {
            if (!f.cone().isEmpty() && settings.cone(f.cone()).isEmpty()
                    && device.equals(device(settings, f.cone()))) {
                out.add(f.cone());
            }
        });
        return out;
    }

    private static String device(Settings settings, String cone) {
        return Names.of("", settings).device(cone);
    }

    private static Change.Described as(Fact f) {
        return (Change.Described) f.change();
    }

    private static String digest(String text) {
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(sum, 0, 16);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
