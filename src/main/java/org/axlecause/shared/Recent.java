package org.axlecause.shared;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Keeps what was asked for last, up to so many; for values that never change, from any thread. */
public final class Recent<K, V> {

    private final int most;
    private final Map<K, V> kept = new LinkedHashMap<>(16, 0.75f, true);

    /** Keeps that many values at most. */
    public Recent(int most) {
        this.most = most;
    }

    /** The value of a key; null where it isn't kept. */
    public synchronized @Nullable V find(K key) {
        return kept.get(key);
    }

    /** Keeps the value and returns it; what was asked for longest ago makes room. */
    public synchronized V keep(K key, V value) {
        kept.put(key, value);
        if (kept.size() > most) {
            kept.remove(kept.keySet().iterator().next());
        }
        return value;
    }
}
