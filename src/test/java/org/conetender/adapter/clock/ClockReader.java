package org.conetender.adapter.clock;

/** Prints boot id and monotonic time as another process of this boot has them. */
public final class ClockReader {

    private ClockReader() {}

    public static void main(String[] args) {
        var now = new LinuxClock().now();
        System.out.println(now.boot() + " " + now.monoMs());
    }
}
