package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import org.axlecause.inference.RuleBase;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Ready when the rule base is loaded; tells which rulebook it is. What else judging needs stops the start where it lacks. */
@Readiness
@ApplicationScoped
class RulesReady implements HealthCheck {

    static final String NAME = "rules";

    private final RuleBase rules;

    RulesReady(RuleBase rules) {
        this.rules = rules;
    }

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named(NAME)
                .status(!rules.rules().isEmpty())
                .withData("rulebook", rules.version())
                .withData("rules", rules.rules().size())
                .build();
    }
}
