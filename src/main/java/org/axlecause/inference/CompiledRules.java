package org.axlecause.inference;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import org.kie.api.runtime.KieRuntimeBuilder;

/** Hands out the rule base that the build compiled. */
@ApplicationScoped
class CompiledRules {

    @Produces
    @Singleton
    RuleBase ruleBase(KieRuntimeBuilder builder) {
        return new RuleBase(builder.getKieBase());
    }
}
