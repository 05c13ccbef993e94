package org.conetender.adapter.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/**
 * The number that stands for a boot id in one file, given on its first use. Numbers rise with time, so that
 * they order the temperatures of different boots; and one byte mostly stands for 36 letters.
 */
final class Boots {

    private final Connection db;
    private final Map<String, Long> known = new HashMap<>();

    Boots(Connection db) {
        this.db = db;
    }

    /** After a rollback: what was learnt inside the transaction is no longer so. */
    void forget() {
        known.clear();
    }

    long number(String id) throws SQLException {
        Long number = known.get(id);
        if (number != null) {
            return number;
        }
        try (PreparedStatement p = db.prepareStatement(
                "INSERT INTO boot (id) VALUES (?) ON CONFLICT DO UPDATE SET id = id RETURNING number")) {
            p.setString(1, id);
            try (ResultSet r = p.executeQuery()) {
                r.next();
                known.put(id, r.getLong(1));
                return r.getLong(1);
            }
        }
    }
}
