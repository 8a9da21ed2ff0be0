package org.axlecause.outbound;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;
import java.util.Set;

/** Time and names as a test wants them, endpoints on this machine. */
public class VirtualTime implements QuarkusTestProfile {

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of("axlecause.outbound.insecure-addresses", "true", "axlecause.outbound.timeout", "5s");
    }

    @Override
    public Set<Class<?>> getEnabledAlternatives() {
        return Set.of(VirtualClock.class, NameServer.class);
    }
}
