package org.conetender.core.image;

/**
 * @param contact id such as {@code a.air-proof}, {@code a.level}, {@code a.button}
 * @param level whether it is closed, open, or could not be read
 */
public record ContactSample(String contact, Level level) {
    public enum Level { CLOSED, OPEN, UNKNOWN }
}
