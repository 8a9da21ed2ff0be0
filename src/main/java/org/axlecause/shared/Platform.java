package org.axlecause.shared;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;

/** What the whole service shares as beans: one clock, one JSON behaviour. */
@ApplicationScoped
class Platform {

    @Produces
    @Singleton
    @DefaultBean
    Clock clock() {
        return Clock.systemUTC();
    }

    @Produces
    @Singleton
    ObjectMapper objectMapper() {
        return Json.mapper();
    }
}
