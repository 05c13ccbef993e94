package org.conetender.adapter.sqlite;

/** What the disk gives back is not what was written; the message says where, a clause. */
final class Damaged extends Exception {
    private static final long serialVersionUID = 1;

    Damaged(String where, Throwable cause) {
        super(where, cause);
    }
}
