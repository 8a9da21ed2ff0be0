package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.callback.QuarkusTestBeforeEachCallback;
import io.quarkus.test.junit.callback.QuarkusTestMethodContext;
import io.restassured.RestAssured;
import io.restassured.filter.Filter;
import io.restassured.filter.FilterContext;
import io.restassured.response.Response;
import io.restassured.specification.FilterableRequestSpecification;
import io.restassured.specification.FilterableResponseSpecification;
import java.net.URI;

/** Holds every answer that a test gets to the committed contract. */
public final class AnswersKeepTheContract implements QuarkusTestBeforeEachCallback, Filter {

    @Override
    public void beforeEach(QuarkusTestMethodContext context) {
        RestAssured.replaceFiltersWith(this);
    }

    @Override
    public Response filter(
            FilterableRequestSpecification request, FilterableResponseSpecification response, FilterContext context) {
        Response answer = context.next(request, response);
        Contract.committed()
                .operation(request.getMethod(), URI.create(request.getURI()).getPath())
                .ifPresent(operation -> assertThat(Contract.committed()
                                .faults(operation, answer.statusCode(), answer.contentType(), answer.asString()))
                        .as("%s by the contract", operation)
                        .isEmpty());
        return answer;
    }
}
