# SPDX-License-Identifier: GPL-3.0-or-later
# House rules for every target: standard, warnings, sanitizers, compiler cache.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
if(NOT CMAKE_BUILD_TYPE AND NOT CMAKE_CONFIGURATION_TYPES)
  set(CMAKE_BUILD_TYPE RelWithDebInfo CACHE STRING "" FORCE)
endif()

find_program(BW_CCACHE ccache)
if(BW_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  # Precompiled headers are cached only when their defines and times may be ignored.
  set(CMAKE_CXX_COMPILER_LAUNCHER
      ${CMAKE_COMMAND} -E env CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime
      CCACHE_BASEDIR=${CMAKE_SOURCE_DIR} CCACHE_NOHASHDIR=1 ${BW_CCACHE})
endif()

add_library(bw_house INTERFACE)
# -Wshadow=local: the full -Wshadow of GCC 12 takes a scoped enumerator (Limit::Pump) for a shadow of
# the type of that name.
# No contracted arithmetic: a seed gives the same trace on every platform.
target_compile_options(bw_house INTERFACE
  -Wall -Wextra -Wpedantic $<IF:$<CXX_COMPILER_ID:GNU>,-Wshadow=local,-Wshadow> -Wconversion -Wold-style-cast -Woverloaded-virtual
  -Wnon-virtual-dtor -Wnull-dereference -ffp-contract=off)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  # False positives of GCC 12 inside std::string when it inlines (GCC bug 105329 and its kin).
  target_compile_options(bw_house INTERFACE -Wno-stringop-overflow -Wno-stringop-overread -Wno-restrict -Wno-array-bounds)
endif()
if(BW_WARNINGS_AS_ERRORS)
  target_compile_options(bw_house INTERFACE -Werror)
endif()
if(BW_CCACHE)
  target_compile_options(bw_house INTERFACE $<$<CXX_COMPILER_ID:GNU>:-fpch-preprocess>)
endif()
if(BW_SANITIZE)
  target_compile_options(bw_house INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=all
                                            -fno-omit-frame-pointer -Wno-maybe-uninitialized -Wno-null-dereference)
  target_link_options(bw_house INTERFACE -fsanitize=address,undefined)
endif()

# Qt rules for the targets that use it.
add_library(bw_house_qt INTERFACE)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  # False positives inside Qt's containers once GCC 12 inlines them.
  target_compile_options(bw_house_qt INTERFACE -Wno-null-dereference -Wno-maybe-uninitialized)
endif()
target_link_libraries(bw_house_qt INTERFACE bw_house)
target_compile_definitions(bw_house_qt INTERFACE
  QT_NO_CAST_FROM_ASCII QT_NO_CAST_TO_ASCII QT_NO_KEYWORDS QT_NO_FOREACH
  QT_DISABLE_DEPRECATED_BEFORE=0x060400)

# bw_embed(<target> <files...>): the files' bytes become bw::resource("<path below resources>").
function(bw_embed target)
  set(out "${CMAKE_CURRENT_BINARY_DIR}/${target}_resources.cpp")
  set(paths "")
  foreach(file IN LISTS ARGN)
    list(APPEND paths "${CMAKE_SOURCE_DIR}/resources/${file}")
  endforeach()
  string(REPLACE ";" "," joined "${ARGN}")
  add_custom_command(OUTPUT "${out}"
    COMMAND ${CMAKE_COMMAND} -DROOT=${CMAKE_SOURCE_DIR}/resources -DFILES=${joined} -DOUT=${out}
            -P ${CMAKE_SOURCE_DIR}/packaging/cmake/embed.cmake
    DEPENDS ${paths} "${CMAKE_SOURCE_DIR}/packaging/cmake/embed.cmake"
    COMMENT "Embedding resources" VERBATIM)
  target_sources(${target} PRIVATE "${out}")
  set_source_files_properties("${out}" PROPERTIES SKIP_PRECOMPILE_HEADERS ON)
endfunction()
