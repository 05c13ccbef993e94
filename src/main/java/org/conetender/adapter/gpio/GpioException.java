package org.conetender.adapter.gpio;

/**
 * A chip or line could not be had or set. The message is a whole sentence for the person at the
 * machine: what was asked, what the kernel answered, and what to do.
 */
public final class GpioException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    public GpioException(String message) {
        super(message);
    }

    public GpioException(String message, Throwable cause) {
        super(message, cause);
    }
}
