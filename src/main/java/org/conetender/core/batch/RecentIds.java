package org.conetender.core.batch;

import java.util.AbstractList;
import java.util.Arrays;
import java.util.List;
import java.util.RandomAccess;

/**
 * The last ids that were heard, oldest first: immutable, and quick to ask for one that was not, since a start
 * asks so for every request of years.
 */
final class RecentIds extends AbstractList<String> implements RandomAccess {

    private final String[] ids;
    private final int[] hashes;

    private RecentIds(String[] ids, int[] hashes) {
        this.ids = ids;
        this.hashes = hashes;
    }

    static RecentIds of(List<String> ids) {
        return ids instanceof RecentIds r ? r
                : new RecentIds(ids.toArray(new String[0]), ids.stream().mapToInt(String::hashCode)
                        .toArray());
    }

    /** With one more, and the oldest gone beyond so many; itself where it is known. */
    RecentIds with(String id, int most) {
        if (contains(id)) {
            return this;
        }
        int from = Math.max(0, ids.length + 1 - most);
        String[] next = Arrays.copyOfRange(ids, from, ids.length + 1);
        int[] nextHashes = Arrays.copyOfRange(hashes, from, ids.length + 1);
        next[next.length - 1] = id;
        nextHashes[next.length - 1] = id.hashCode();
        return new RecentIds(next, nextHashes);
    }

    @Override
    public boolean contains(Object id) {
        int hash = id.hashCode();
        for (int i = hashes.length - 1; i >= 0; i--) {
            if (hashes[i] == hash && ids[i].equals(id)) {
                return true;
            }
        }
        return false;
    }

    @Override
    public String get(int i) {
        return ids[i];
    }

    @Override
    public int size() {
        return ids.length;
    }
}
