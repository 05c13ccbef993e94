package org.conetender.adapter.onewire;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.conetender.port.Clock;
import org.conetender.port.Probe;

/**
 * All 1-wire probes of the machine. The kernel's links tell which bus master a probe hangs on; each
 * master gets a reader thread of its own. A probe whose master cannot be told, because it is absent at
 * the start or because the root is a plain directory, is read by the first master's thread: it is found
 * when it appears, only its conversion may not be part of a bulk one.
 */
public final class OneWire implements AutoCloseable {

    /** Where the kernel shows 1-wire devices. */
    public static final Path KERNEL = Path.of("/sys/bus/w1/devices");

    /** Time between cycles, ms: a 12-bit conversion takes 0.75 s, and the water far longer to change. */
    public static final long PERIOD_MS = 2_000;

    private static final Pattern ADDRESS = Pattern.compile("28-[0-9a-f]{12}");
    private static final String MASTER = "w1_bus_master";

    /** @param probe its id as configured  @param address its folder's name, such as 28-0123456789ab */
    public record Place(String probe, String address) {
        /** @throws IllegalArgumentException if that is no DS18B20's address */
        public Place {
            if (!ADDRESS.matcher(address).matches()) {
                throw new IllegalArgumentException("probe " + probe + ": \"" + address + "\" is no DS18B20's"
                        + " address; it looks like 28-0123456789ab, and ls " + KERNEL + " lists yours");
            }
        }
    }

    private final List<Probe> probes = new ArrayList<>();
    private final List<OneWireBus> buses = new ArrayList<>();

    /** Finds the masters; reads nothing before {@link #start}. @param root {@link #KERNEL}, or alike */
    public OneWire(Path root, List<Place> places, Clock clock) {
        List<String> masters = masters(root);
        Map<String, List<OneWireProbe>> byMaster = new TreeMap<>();
        for (Place p : places) {
            Path folder = root.resolve(p.address());
            OneWireProbe probe = new OneWireProbe(p.probe(), folder, clock.now().monoMs());
            String first = masters.isEmpty() ? MASTER + "1" : masters.get(0);
            byMaster.computeIfAbsent(masterOf(folder).orElse(first), m -> new ArrayList<>()).add(probe);
            probes.add(probe);
        }
        byMaster.forEach((master, list) -> buses.add(
                new OneWireBus(master, list, new KernelBulk(root.resolve(master)), clock)));
    }

    private static List<String> masters(Path root) {
        List<String> names = new ArrayList<>();
        try (DirectoryStream<Path> found = Files.newDirectoryStream(root, MASTER + "*")) {
            found.forEach(p -> names.add(p.getFileName().toString()));
        } catch (IOException e) {
            return List.of(); // no such folder: every probe is absent, and says so
        }
        return names.stream().sorted().toList();
    }

    private static Optional<String> masterOf(Path folder) {
        try {
            String parent = folder.toRealPath().getParent().getFileName().toString();
            return parent.startsWith(MASTER) ? Optional.of(parent) : Optional.empty();
        } catch (IOException absent) {
            return Optional.empty();
        }
    }

    /** Starts the reader threads; once. @param periodMs {@link #PERIOD_MS} unless configured */
    public void start(long periodMs) {
        buses.forEach(b -> b.start(periodMs));
    }

    /** The probes in the order of their places. */
    public List<Probe> probes() {
        return List.copyOf(probes);
    }

    /** How many bus masters are read, each on its own thread. */
    public int masterCount() {
        return buses.size();
    }

    /** What a person should know about supply, resolution and rights, as sentences. Any thread. */
    public List<String> describe() {
        return buses.stream().flatMap(b -> b.describe().stream()).toList();
    }

    @Override
    public void close() {
        buses.forEach(OneWireBus::close);
    }
}
