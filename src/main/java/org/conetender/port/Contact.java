package org.conetender.port;

import org.conetender.core.image.ContactSample;

/** One contact (level, air proof, hand button). Read from the control thread; never waits or throws. */
public interface Contact {

    /** The contact's id as configured. */
    String id();

    /** Whether it is closed or open now; unknown when it cannot be read. */
    ContactSample.Level read();
}
