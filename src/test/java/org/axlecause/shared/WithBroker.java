package org.axlecause.shared;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.Map;

/** Topics of the demo tenant at the broker of the test run, which may start later than the service; receivers here. */
public class WithBroker implements QuarkusTestProfile {

    public static final String IN = "demo.events";
    public static final String OUT = "demo.told";

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of(
                "kafka.bootstrap.servers",
                Broker.address(),
                "axlecause.kafka.in",
                IN + "=demo:workshops",
                "axlecause.kafka.out",
                OUT + "=demo",
                "axlecause.outbound.insecure-addresses",
                "true");
    }
}
