package org.axlecause.access;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** Access by keys, reachable from everywhere, with few places so that tests can fill them. */
public class WithKeys implements QuarkusTestProfile {

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of(
                "axlecause.access", "keys",
                "quarkus.http.host", "0.0.0.0",
                "axlecause.requests-per-minute", "200",
                "axlecause.requests-at-once", "4",
                "axlecause.memory-for-bodies", "1M");
    }
}
