package org.axlecause.policy;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import org.axlecause.facts.Policy;

/** Hands out the policy by which cases are judged; a wrong file stops the start. */
@Startup
@ApplicationScoped
class PolicyInForce {

    private final Policy baseline = PolicyFile.baseline();

    @Produces
    @Singleton
    Policy policy() {
        return baseline;
    }
}
